// A year of an invented office: fifty trailers, five technicians, repairs, refusals, a grade amended, points left out.
// The generator knows by plain rules of its own what is to be said of each trailer at each visit, the day after, 92
// days and 13 months after. The phone's judge, `cotter judge`, the printed report and the office's ledger must all say
// that, in the same words. COTTER_PROGRAM names the program.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <random>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "core/base/text.h"
#include "core/book/book.h"
#include "core/judge/judge_job.h"
#include "core/report/report.h"
#include "core/survey/edit.h"
#include "tests/core/ledger/towing_bench.h"
#include "tests/core/photo/photo_maker.h"
#include "tests/core/report/report_font.h"
#include "tests/support/effort.h"
#include "tests/support/invented.h"
#include "tests/support/temp_folder.h"

using namespace cotter;
using namespace cotter::test;

namespace {

constexpr int kTrailers = 50;
constexpr std::int64_t kDay = 86'400;
constexpr std::array kTechnicians{"A. Tester", "B. Quill", "C. Marsh", "D. Oakes", "E. Lindqvist"};
constexpr std::array<std::int64_t, 4> kAfter{0, kDay, 92 * kDay, 396 * kDay};

enum class Happens {
    all_good,
    left_out,         // what keeps for a day is not answered at one corner
    refused_stop,     // a fault that forbids towing; the customer says no
    refused_repair,   // the same, graded 'repair'
    repaired_seen,    // repaired, and looked at afterwards
    repaired_unseen,  // repaired, and nobody looked
    amended           // graded 'do not tow' first; amended to 'repair' after the sign-off, with a reason
};
constexpr int kKinds = 7;

// What the generator knows of a trailer: a fault that nobody took away, and what the last visit left unanswered.
struct Truth {
    std::optional<Grade> standing;
    bool unanswered = false;

    void after(Happens what) {
        standing.reset();  // each visit looks at that point again
        unanswered = what == Happens::left_out;
        if (what == Happens::refused_stop || what == Happens::repaired_unseen) standing = Grade::do_not_tow;
        if (what == Happens::refused_repair || what == Happens::amended) standing = Grade::repair;
    }
    TowOutcome at(std::int64_t after_visit) const {
        if (standing) return *standing == Grade::do_not_tow ? TowOutcome::do_not_tow : TowOutcome::not_before_repair;
        return unanswered || after_visit >= kDay ? TowOutcome::cannot_tell : TowOutcome::nothing_against;
    }
};

struct Told {
    std::string outcome, answer;
    bool operator==(const Told&) const = default;
};

struct Handing {
    Job job;
    std::optional<Job> before;  // the revision that was handed in first
};

AnswerYard yard_of(int trailer, const char* day, int number) {
    switch (trailer % 4) {
        case 0:
            return disc_yard(day, number);
        case 1:
            return electric_yard(day, number);
        case 2:
            return drum_yard(day, number);
        default:
            return air_yard(day, number);
    }
}

SignOff signed_at(AnswerYard& yard, const std::string& by) {
    return {{yard.id()}, yard.now(), by, "I did the work listed.", "as it stood"};
}

Handing visit(int trailer, const Date& day, int number, Happens what, const std::string& technician) {
    const std::string text = day.text();
    AnswerYard yard = yard_of(trailer, text.c_str(), number);
    yard.change_trailer([&](Trailer& t) {
        t.unit = fmt::format("YR-{:02}", trailer);
        t.vin = invented_vin(trailer);
    });
    yard.change_visit([&](Visit& v) { v.technician = technician; });
    if (what == Happens::left_out) yard.leave_out(PointId::tire_press, "axle1-left");
    yard.all_good();
    const auto fault = [&](Grade grade, Outcome outcome) {
        return yard.find("axle1-left", "wheel nuts", "one missing", grade, outcome);
    };
    Handing out;
    switch (what) {
        case Happens::all_good:
        case Happens::left_out:
            break;
        case Happens::refused_stop:
            fault(Grade::do_not_tow, Outcome::declined);
            break;
        case Happens::refused_repair:
            fault(Grade::repair, Outcome::declined);
            break;
        case Happens::repaired_seen:
            fault(Grade::do_not_tow, Outcome::repaired);
            yard.look(PointId::wheel_nuts, "axle1-left", LookResult::good, {}, Stage::after);
            break;
        case Happens::repaired_unseen:
            fault(Grade::do_not_tow, Outcome::repaired);
            break;
        case Happens::amended: {
            Finding f = fault(Grade::do_not_tow, Outcome::deferred);
            yard.put(signed_at(yard, technician));
            out.before = yard.job();
            f.grade = Grade::repair;
            yard.put(f);
            break;
        }
    }
    if (!yard.job().signed_off()) yard.put(signed_at(yard, technician));
    out.job = yard.job();
    return out;
}

std::string program() {
    const char* path = std::getenv("COTTER_PROGRAM");
    REQUIRE_MESSAGE(path != nullptr, "COTTER_PROGRAM names the program");
    return path;
}

std::string output_of(const std::string& command) {
    std::string out;
    std::FILE* pipe = ::popen(command.c_str(), "r");
    REQUIRE(pipe != nullptr);
    std::array<char, 4096> part{};
    while (const std::size_t n = std::fread(part.data(), 1, part.size(), pipe)) out.append(part.data(), n);
    REQUIRE_MESSAGE(::pclose(pipe) == 0, command);
    return out;
}

// A phone's book with the visits so far, as commits.
class Phone {
public:
    explicit Phone(Files& files) : files_(files) {}

    void keep(const Job& job) {
        auto book = good(Book::open(files_, folder_.path(), OpenMode::create));
        Edit opening = edit_of(job), rest = edit_of(job), sign = edit_of(job);
        for (std::size_t kind = 0; kind < names(RecordKind{}).size(); ++kind)
            with_records(job, static_cast<RecordKind>(kind), [&](const auto& list) {
                using R = typename std::decay_t<decltype(list)>::value_type;
                constexpr bool first = std::is_same_v<R, Visit> || std::is_same_v<R, Trailer>;
                for (const R& record : list)
                    (first                        ? opening
                     : std::is_same_v<R, SignOff> ? sign
                                                  : rest)
                        .changes.push_back(Put(record, std::nullopt));
            });
        for (const Edit* edit : {&opening, &rest, &sign}) (void)good(book->commit(*edit));
    }

    Told asks(const Job& job, const Instant& at) const {
        const auto json = nlohmann::json::parse(output_of(fmt::format(
            "'{}' judge --json --book '{}' {} --as-of {}", program(), folder_.path(), job.id().text(), at.text())));
        return {json["may_it_be_towed"], json["answer"]};
    }

private:
    static Edit edit_of(const Job& job) {
        Edit edit;
        edit.job = job.id();
        edit.at = job.only<Visit>()->opened;
        edit.by = job.only<Visit>()->technician;
        return edit;
    }

    Files& files_;
    TempFolder folder_;
};

std::string without_spaces(std::string text) {
    std::erase_if(text, [](char c) { return c == ' ' || c == '\n' || c == '\f' || c == '\r'; });
    return text;
}

// Page 1 of the report that is made at this time, as a public tool reads it.
std::string page_one(LedgerBench& bench, const Job& job, std::span<const Job> earlier, const Instant& at) {
    static const Fonts fonts;
    static const Bytes gray = made::jpeg(64, 48, [](int, int) { return std::vector<std::uint8_t>{128, 128, 128}; });
    ReportInputs inputs;
    inputs.font = fonts.regular;
    inputs.font_bold = fonts.bold;
    inputs.picture = [&](const Shot&) -> Result<ReportPicture> { return ReportPicture{gray, 64, 48}; };
    inputs.packet_name = "year";
    inputs.software = "Cotter test";
    inputs.at = at;
    inputs.limits = bench.judging.limits;
    inputs.earlier = earlier;
    const std::string file = bench.path("report.pdf");
    good(replace_file(*bench.files, file, good(report_pdf(job, inputs))));
    return output_of(fmt::format("pdftotext -raw -l 1 '{}' -", file));
}

ledger::TrustList trusted() {
    std::string lines;
    for (const char* name : kTechnicians)
        lines += fmt::format("\"{}\" namespaces=\"cotter-packet\" {}\n", name, office_key(name).public_line());
    return good(ledger::parse_allowed_signers(lines));
}

void hand_in(LedgerBench& bench, const Handing& handing, const std::string& technician) {
    ledger::ReceiveOptions options;
    options.trust = trusted();
    std::string previous;
    for (const Job* job : {handing.before ? &*handing.before : nullptr, &handing.job}) {
        if (job == nullptr) continue;
        PacketParts parts = office_parts(*job, 1, bench.photos);
        parts.signer = technician;
        parts.revision = parts.document.revision = previous.empty() ? 1 : 2;
        parts.document.previous_tagmanifest_sha256 = previous;
        const SealedPacket packet = seal(parts);
        bench.receive({bench.put(packet, packet.fingerprint.substr(0, 16) + ".zip")}, options);
        REQUIRE(bench.told.size() == 1);
        REQUIRE_MESSAGE(bench.told[0].arrival < ledger::Arrival::there_already, bench.told[0].why);
        previous = packet.fingerprint;
    }
}

Told at_office(LedgerBench& bench, const std::string& unit) {
    while (good(bench.ledger->renew_answers(100)) > 0) continue;
    ledger::FleetAsk ask;
    ask.words = unit;
    const auto rows = good(bench.ledger->fleet(ask));
    REQUIRE(rows.size() == 1);
    REQUIRE(rows[0].tow);
    const auto page = good(bench.ledger->trailer(rows[0].key)).trailer.tow;  // worked out anew, not from the row
    REQUIRE(page);
    CHECK(page->says == rows[0].tow->says);
    return {std::string(name_of(rows[0].tow->outcome)), rows[0].tow->says};
}

struct Tally {
    int visits = 0, asked = 0, reports = 0;
    std::array<int, 5> outcomes{};
};

// One visit, seen from everywhere at four times.
void compare(LedgerBench& bench, const Phone& phone, const std::vector<Job>& visits, const Truth& truth, Tally& tally) {
    const Job& job = visits.back();
    const auto earlier = std::span(visits).first(visits.size() - 1);
    const Instant noon{job.only<Visit>()->opened.unix_s + 5 * 3600, job.only<Visit>()->opened.offset_min};
    for (const std::int64_t after : kAfter) {
        const Instant at{noon.unix_s + after, noon.offset_min};
        bench.clock.at = at;
        const TowOutcome expected = truth.at(after);
        CAPTURE(job.only<Trailer>()->unit);
        CAPTURE(at.text());
        const Summary s = judge_job(job, bench.judging.limits, {earlier, at});
        const Told here{std::string(name_of(s.tow.outcome)), s.answer};
        CHECK_MESSAGE(here.outcome == name_of(expected), here.answer);
        CHECK(phone.asks(job, at) == here);
        CHECK(at_office(bench, job.only<Trailer>()->unit) == Told{here.outcome, one_line(here.answer, 800)});
        if (tally.asked % 8 == 0) {
            const std::string page = without_spaces(page_one(bench, job, earlier, at));
            CHECK_MESSAGE(page.find(without_spaces(here.answer)) != std::string::npos, here.answer);
            ++tally.reports;
        }
        ++tally.asked;
        ++tally.outcomes[static_cast<std::size_t>(expected)];
    }
}

}  // namespace

TEST_CASE("a generated year: the phone, the command line, the report and the office say the truth, in the same words") {
    std::mt19937 chance(20261129);
    const auto below = [&](unsigned n) { return static_cast<int>(chance() % n); };
    const int trailers = few() ? 6 : kTrailers;
    LedgerBench whole(false);  // takes in everything
    std::vector<Truth> last(static_cast<std::size_t>(trailers));
    Tally tally;
    for (int trailer = 0; trailer < trailers; ++trailer) {
        LedgerBench bench(false);
        Phone phone(*bench.files);
        std::vector<Job> visits;
        Truth& truth = last[static_cast<std::size_t>(trailer)];
        std::int64_t day = Date::parse("2025-06-02").value().days() + below(60);
        for (const std::int64_t until = day + 300; day < until; day += 25 + below(120)) {
            const auto what = static_cast<Happens>(below(kKinds));
            const std::string technician = kTechnicians[static_cast<std::size_t>(below(5))];
            const Handing handing = visit(trailer, Date::from_days(day), ++tally.visits, what, technician);
            visits.push_back(handing.job);
            bench.clock.at = handing.job.only<SignOff>()->at;
            whole.clock.at = bench.clock.at;
            hand_in(bench, handing, technician);
            hand_in(whole, handing, technician);
            phone.keep(handing.job);
            truth.after(what);
            compare(bench, phone, visits, truth, tally);
        }
    }
    whole.clock.at = *Instant::parse("2027-09-01T12:00:00-06:00");  // long after all of them
    for (int trailer = 0; trailer < trailers; ++trailer)
        CHECK(at_office(whole, fmt::format("YR-{:02}", trailer)).outcome ==
              name_of(last[static_cast<std::size_t>(trailer)].at(kDay)));
    const auto desk =
        nlohmann::json::parse(output_of(fmt::format("'{}' trailers --json --ledger '{}'", program(), whole.where)));
    REQUIRE(desk.size() == static_cast<std::size_t>(trailers));
    for (const auto& row : desk) {
        const std::string unit = row["unit"];
        const auto& truth = last.at(static_cast<std::size_t>(std::stoi(unit.substr(3))));
        CHECK_MESSAGE(row["towing"]["outcome"] == name_of(truth.at(kDay)), unit);
    }
    fmt::print(
        "{} trailers, {} visits, asked {} times in four places, {} reports read: {} do not tow, {} not before "
        "repair, {} cannot tell, {} nothing found against it\n",
        trailers, tally.visits, tally.asked, tally.reports, tally.outcomes[0], tally.outcomes[1], tally.outcomes[2],
        tally.outcomes[3]);
    for (int i = 0; i < 4; ++i) CHECK(tally.outcomes[static_cast<std::size_t>(i)] > 0);
}
