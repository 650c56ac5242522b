// Taking in: each packet once, all or nothing, and every file told what became of it.
#include "tests/core/ledger/ledger_bench.h"

#include <array>
#include <fmt/format.h>
#include <set>

#include "core/base/text.h"
#include "core/photo/vault.h"

using namespace cotter;
using namespace cotter::test;
using ledger::Arrival;
using ledger::KeyStanding;
using ledger::Role;

namespace {

std::vector<Arrival> arrivals(const LedgerBench& bench) {
    std::vector<Arrival> out;
    for (const auto& receipt : bench.told) out.push_back(receipt.arrival);
    return out;
}

PacketParts parts_of(LedgerBench& bench, int number) {
    return office_parts(office_job(number, bench.shape), number, bench.photos);
}

}  // namespace

TEST_CASE("receive: packets are taken once, their photos too") {
    on_each_engine([](LedgerBench& bench) {
        for (int i = 0; i < 25; ++i) bench.put(office_packet(i, bench.shape, bench.photos));
        const auto first = bench.receive();
        CHECK(first.taken == 25);
        CHECK(bench.told.size() == 25);
        const auto counts = good(bench.ledger->counts());
        CHECK(counts.packets == 25);
        CHECK(counts.jobs == 25);
        CHECK(counts.trailers == 10);
        CHECK(counts.photos == 50);
        const auto again = bench.receive();
        CHECK(again.there_already == 25);
        CHECK(again.taken == 0);
        CHECK(good(bench.ledger->counts()).packets == 25);
        CHECK(good(bench.ledger->counts()).receipts == 50);
        const auto shots = good(bench.ledger->shots(office_id(3, 0).text()));
        REQUIRE(shots.size() == 2);
        CHECK(good(bench.ledger->photos().original(shots[0].sha256)) == bench.photos.photo(3, 0));
    });
}

TEST_CASE("receive: the same photo in two slots of one packet is taken in the first time, and lies there once") {
    on_each_engine([](LedgerBench& bench) {
        PacketParts parts = parts_of(bench, 7);
        auto& photos = parts.document.photos;
        auto& shots = parts.document.job.all<Shot>();
        REQUIRE(photos.size() == 2);
        parts.photos[photos[1].file] = parts.photos[photos[0].file];
        photos[1].sha256 = photos[0].sha256;
        shots[1].photo = shots[0].photo;
        bench.put(seal(parts));
        bench.receive();
        REQUIRE_MESSAGE(arrivals(bench) == std::vector{Arrival::taken}, bench.told[0].why);
        CHECK(good(bench.ledger->counts()).photos == 1);
        CHECK(good(bench.ledger->photos().original(photos[0].sha256)) == parts.photos[photos[0].file]);
        CHECK(good(bench.files->list(bench.path("photos/incoming"))).empty());
    });
}

TEST_CASE("receive: a job comes out as it went in") {
    on_each_engine([](LedgerBench& bench) {
        const PacketParts parts = parts_of(bench, 7);
        const SealedPacket packet = seal(parts);
        bench.put(packet);
        bench.receive();
        CHECK(good(bench.ledger->job(office_id(7, 0).text())) == parts.document.job);
        CHECK(as_text(good(bench.ledger->document(packet.fingerprint))) == job_document_json(parts.document));
    });
}

TEST_CASE("receive: revisions in any order show the last one and keep all") {
    on_each_engine([](LedgerBench& bench) {
        const PacketParts first = parts_of(bench, 1);
        const SealedPacket r1 = seal(first);
        PacketParts second = revised(first, r1.fingerprint);
        second.document.job.all<Visit>()[0].customer = "the new customer";
        const SealedPacket r2 = seal(second);
        bench.receive({bench.put(r1)});
        CHECK(arrivals(bench) == std::vector{Arrival::taken});
        bench.receive({bench.put(r2)});
        CHECK(arrivals(bench) == std::vector{Arrival::revision});
        const std::string job = office_id(1, 0).text();
        CHECK(good(bench.ledger->job(job)).only<Visit>()->customer == "the new customer");

        LedgerBench& other = bench;
        other.where = bench.another_place();
        other.open();
        other.receive({other.path("in/" + r2.name + ".zip")});
        other.receive({other.path("in/" + r1.name + ".zip")});
        CHECK(arrivals(other) == std::vector{Arrival::older});
        CHECK(good(other.ledger->job(job)).only<Visit>()->customer == "the new customer");
        const auto packets = good(other.ledger->packets(job));
        REQUIRE(packets.size() == 2);
        CHECK(packets[0].role == Role::view);
        CHECK(packets[1].role == Role::history);
        CHECK_FALSE(packets[0].chain_broken);
        const auto hits = good(other.ledger->search({"new customer", {}, 50, 0}));
        REQUIRE(hits.size() == 1);
        CHECK(good(other.ledger->search({hits[0].job.unit, {}, 50, 0})).size() == 1);
    });
}

TEST_CASE("receive: packets that contradict each other are both kept for a person to decide") {
    on_each_engine([](LedgerBench& bench) {
        const SealedPacket one = seal(parts_of(bench, 1));
        PacketParts other_parts = parts_of(bench, 1);
        other_parts.document.job.all<Visit>()[0].customer = "somebody else";
        const SealedPacket other = seal(other_parts);
        bench.receive({bench.put(one, "a.zip")});
        bench.receive({bench.put(other, "b.zip")});
        CHECK(arrivals(bench) == std::vector{Arrival::conflict});
        const std::string job = office_id(1, 0).text();
        CHECK(good(bench.ledger->job(job)).only<Visit>()->customer != "somebody else");
        auto lines = good(bench.ledger->jobs({}, 10, 0));
        REQUIRE(lines.size() == 1);
        CHECK(lines[0].conflict);
        for (const auto& packet : good(bench.ledger->packets(job))) CHECK(packet.conflict);
        good(bench.ledger->choose(other.fingerprint));
        CHECK(good(bench.ledger->job(job)).only<Visit>()->customer == "somebody else");
        CHECK(good(bench.ledger->search({"somebody", {}, 10, 0})).size() == 1);
    });
}

TEST_CASE("receive: a revision that names another past is a conflict") {
    on_each_engine([](LedgerBench& bench) {
        const PacketParts parts = parts_of(bench, 2);
        bench.receive({bench.put(seal(parts))});
        bench.receive({bench.put(seal(revised(parts, std::string(64, '0'))))});
        CHECK(arrivals(bench) == std::vector{Arrival::conflict});
        CHECK(good(bench.ledger->packets(office_id(2, 0).text()))[0].chain_broken);
    });
}

TEST_CASE("receive: a key never seen for a known technician is held until somebody accepts it") {
    on_each_engine([](LedgerBench& bench) {
        const PacketParts parts = parts_of(bench, 4);
        const SealedPacket mine = seal(parts);
        bench.receive({bench.put(mine)});
        CHECK(good(bench.ledger->packets(office_id(4, 0).text()))[0].standing == KeyStanding::first);
        PacketParts forged = revised(parts, mine.fingerprint);
        forged.document.job.all<Visit>()[0].customer = "paid already";
        forged.signer = "a stranger";
        bench.receive({bench.put(seal(forged))});
        CHECK(arrivals(bench) == std::vector{Arrival::held});
        CHECK(bench.told[0].why.find("flagged") != std::string::npos);
        const std::string job = office_id(4, 0).text();
        CHECK(good(bench.ledger->job(job)).only<Visit>()->customer != "paid already");
        const auto packets = good(bench.ledger->packets(job));
        CHECK(packets[0].role == Role::held);
        CHECK(packets[0].standing == KeyStanding::new_key);
        CHECK_FALSE(good(bench.ledger->jobs({}, 1, 0))[0].conflict);
        good(bench.ledger->accept_key(packets[0].technician, packets[0].signer));
        CHECK(good(bench.ledger->job(job)).only<Visit>()->customer == "paid already");
        bench.receive({bench.put(seal(parts_of(bench, 10)))});  // the same technician, his old key
        CHECK(good(bench.ledger->packets(office_id(10, 0).text()))[0].standing == KeyStanding::seen);
    });
}

TEST_CASE("receive: a name like a known one on somebody else's job is held") {
    on_each_engine([](LedgerBench& bench) {
        const std::string known = office_technician(4);
        // Other letters that look the same; other blanks and case, which is the same name.
        const std::array names{"\xD0\x85" + known.substr(1), "  " + ascii_lower(known)};
        for (int i = 0; i < 2; ++i) {
            const int number = 4 + 6 * i;  // the same technician's
            const PacketParts parts = parts_of(bench, number);
            const SealedPacket mine = seal(parts);
            bench.receive({bench.put(mine)});
            PacketParts forged = revised(parts, mine.fingerprint);
            forged.signer = "a stranger";
            Visit& visit = forged.document.job.all<Visit>()[0];
            visit.customer = "paid already";
            visit.technician = names[static_cast<std::size_t>(i)];
            bench.receive({bench.put(seal(forged))});
            CAPTURE(visit.technician);
            CHECK(arrivals(bench) == std::vector{Arrival::held});
            const std::string job = office_id(number, 0).text();
            CHECK(good(bench.ledger->packets(job))[0].standing == KeyStanding::new_key);
            CHECK(good(bench.ledger->job(job)).only<Visit>()->customer != "paid already");
        }
    });
}

TEST_CASE("receive: the trust list tells whose key it is") {
    on_each_engine([](LedgerBench& bench) {
        ledger::ReceiveOptions options;
        options.trust = good(ledger::parse_allowed_signers(office_signers()));
        bench.receive({bench.put(office_packet(0, bench.shape, bench.photos))}, options);
        CHECK(good(bench.ledger->packets(office_id(0, 0).text()))[0].standing == KeyStanding::listed);
        PacketParts forged = parts_of(bench, 1);
        forged.signer = office_technician(2);
        bench.receive({bench.put(seal(forged))}, options);
        CHECK(good(bench.ledger->packets(office_id(1, 0).text()))[0].standing == KeyStanding::other_name);
        CHECK(good(bench.ledger->jobs({}, 10, 0)).size() == 2);  // shown, as there is no other, and flagged
        ledger::JobFilter doubtful;
        doubtful.doubtful = true;
        CHECK(good(bench.ledger->jobs(doubtful, 10, 0)).size() == 1);
        PacketParts stranger = parts_of(bench, 3);
        stranger.signer = "a stranger";
        bench.receive({bench.put(seal(stranger))}, options);  // listed technician, unlisted key
        CHECK(good(bench.ledger->packets(office_id(3, 0).text()))[0].standing == KeyStanding::new_key);
    });
}

TEST_CASE("receive: every kind of bad packet is refused with its reason, the good ones beside it are taken") {
    on_each_engine([](LedgerBench& bench) {
        std::map<std::string, std::string> wanted;
        for (int kind = 0; kind < kBadKinds; ++kind) {
            const BadPacket bad = bad_packet(kind, 100 + kind, bench.shape, bench.photos);
            const std::string name = bench.path(fmt::format("in/bad{:02}", kind)) + (bad.zip.empty() ? "" : ".zip");
            if (!bad.zip.empty()) good(replace_file(*bench.files, name, bad.zip));
            for (const auto& [file, bytes] : bad.files) {
                good(bench.files->make_folders(parent_folder(join_path(name, file))));
                good(replace_file(*bench.files, join_path(name, file), bytes));
            }
            wanted[name] = bad.says;
            bench.put(office_packet(kind, bench.shape, bench.photos));
        }
        const auto result = bench.receive();
        CHECK(result.taken == kBadKinds);
        CHECK(result.refused == kBadKinds);
        std::set<std::string> reasons;
        for (const auto& receipt : bench.told) {
            const auto it = wanted.find(receipt.path);
            if (it == wanted.end()) continue;
            CAPTURE(receipt.path);
            CAPTURE(receipt.why);
            CHECK(receipt.arrival == Arrival::refused);
            CHECK(receipt.why.find(it->second) != std::string::npos);
            CHECK(receipt.why.find('\n') == std::string::npos);
            reasons.insert(receipt.why);
        }
        CHECK(reasons.size() == kBadKinds);
        CHECK(good(bench.ledger->counts()).photos == 2 * kBadKinds);
        CHECK(good(bench.files->list(bench.path("photos/incoming"))).empty());
    });
}

TEST_CASE("receive: a document of a later minor version is kept to the byte and read as far as it is known") {
    on_each_engine([](LedgerBench& bench) {
        PacketParts parts = parts_of(bench, 5);
        std::string text;
        parts.change_json = [&](std::string& json) {
            const auto put = [&](std::string_view what, std::string_view by) {
                json.replace(json.find(what), what.size(), by);
            };
            put("\"version\": \"1.1\"", "\"version\": \"1.7\"");
            put("\"customer\"", "\"moon_phase\": \"full\", \"customer\"");
            put("\"amendments\"", "\"echo_sounding\": [{\"depth\": 4}], \"amendments\"");
            text = json;
        };
        const SealedPacket packet = seal(parts);
        bench.receive({bench.put(packet)});
        REQUIRE(arrivals(bench) == std::vector{Arrival::taken});
        CHECK(as_text(good(bench.ledger->document(packet.fingerprint))) == text);
        CHECK(good(bench.ledger->packets(office_id(5, 0).text()))[0].newer_format);
        CHECK(good(bench.ledger->job(office_id(5, 0).text())) == parts.document.job);
    });
}

TEST_CASE("receive: cancelled, it keeps whole groups and goes on later") {
    on_each_engine([](LedgerBench& bench) {
        for (int i = 0; i < 60; ++i) bench.put(office_packet(i, bench.shape, bench.photos));
        ledger::ReceiveOptions options;
        options.progress = [](const ledger::Progress& p) { return p.done < 20; };
        const auto part = bench.receive(options);
        CHECK(part.cancelled);
        CHECK(part.taken >= 20);
        CHECK(part.taken < 60);
        CHECK(good(bench.ledger->counts()).packets == static_cast<std::int64_t>(part.taken));
        const auto rest = bench.receive();
        CHECK(rest.there_already == part.taken);
        CHECK(rest.taken == 60 - part.taken);
    });
}

TEST_CASE("receive: what is no file, and what is not there, is said") {
    LedgerBench bench(false);
    const auto result = bench.receive({bench.path("nowhere.zip")});
    CHECK(result.refused == 1);
    CHECK(bench.told[0].why.find("No such file") != std::string::npos);
}
