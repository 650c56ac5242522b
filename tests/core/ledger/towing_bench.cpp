// See towing_bench.h.
#include "tests/core/ledger/towing_bench.h"

#include <fmt/format.h>

namespace cotter::test {

ledger::TrustList yard_trust() {
    return good(ledger::parse_allowed_signers(
        fmt::format("\"{}\" namespaces=\"cotter-packet\" {}\n", kTechnician, office_key(kTechnician).public_line())));
}

std::string take(LedgerBench& bench, const AnswerYard& yard, const Handed& how) {
    PacketParts parts = office_parts(yard.job(), 1, bench.photos);
    parts.signer = how.signer;
    parts.revision = how.revision;
    parts.document.revision = how.revision;
    parts.document.previous_tagmanifest_sha256 = how.previous;
    const SealedPacket packet = seal(parts);
    ledger::ReceiveOptions options;
    if (how.trusted) options.trust = yard_trust();
    bench.receive({bench.put(packet, packet.fingerprint.substr(0, 12) + ".zip")}, options);
    REQUIRE(bench.told.size() == 1);
    CAPTURE(bench.told[0].why);
    REQUIRE(bench.told[0].arrival < ledger::Arrival::there_already);
    return packet.fingerprint;
}

ledger::TrailerLine the_trailer(LedgerBench& bench) {
    auto all = good(bench.ledger->fleet({}));
    REQUIRE(all.size() == 1);
    return all.front();
}

ledger::TowLine tow_of(LedgerBench& bench) {
    const auto trailer = the_trailer(bench);
    REQUIRE(trailer.tow);
    return *trailer.tow;
}

ledger::TowLine renewed(LedgerBench& bench) {
    while (good(bench.ledger->renew_answers(100)) > 0) continue;
    return tow_of(bench);
}

std::vector<Limit> other_limits(const LedgerBench& bench) {
    std::vector<Limit> out = bench.judging.limits;
    for (Limit& limit : out)
        if (limit.what == what::tread_depth) limit.value = *make_amount("40", "mm");
    REQUIRE(out != bench.judging.limits);
    return out;
}

AnswerYard good_visit(const char* day, int number) {
    AnswerYard yard = disc_yard(day, number);
    yard.all_good();
    return yard;
}

AnswerYard bad_visit(const char* day, int number) {
    AnswerYard yard = good_visit(day, number);
    yard.find("axle1-left", "wheel nuts", "one missing", Grade::do_not_tow);
    return yard;
}

}  // namespace cotter::test
