// The first page, for who was not there: which trailer, may it be towed and why, what was done, what was not, what it
// costs, when to look again, and the code by which this page and the packet belong together.
#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "core/quote/answer.h"
#include "core/quote/exact.h"
#include "core/report/parts.h"
#include "core/report/qr.h"
#include "core/report/say.h"
#include "core/report/table.h"
#include "core/work/work_log.h"

namespace cotter {

namespace {

constexpr double kCode = 84;  // of the QR code with its quiet zone
constexpr std::size_t kMostReasons = 4, kMostDone = 5, kMostOpen = 10;

std::string unit_or_vin(const Trailer* trailer) {
    if (trailer == nullptr) return "No trailer recorded";
    if (!trailer->unit.empty()) return trailer->unit;
    return trailer->vin.empty() ? "Trailer without unit number or VIN" : trailer->vin;
}

void draw_code(Canvas& canvas, const QrCode& code, PaperSpot upper_left) {
    constexpr int kQuiet = 4;  // modules around it, as the standard asks
    const double module = kCode / (code.side + 2 * kQuiet);
    const auto place = [&](int at) { return module * (at + kQuiet); };
    for (int y = 0; y < code.side; ++y)
        for (int x = 0; x < code.side; ++x) {
            const int from = x;
            while (x < code.side && code.at(x, y)) ++x;
            if (x == from) continue;
            const double top = upper_left.y + place(y), bottom = upper_left.y + place(y + 1);
            const double left = upper_left.x + place(from), right = upper_left.x + place(x);
            canvas.polygon(std::array<PaperSpot, 4>{PaperSpot{left, top}, PaperSpot{right, top},
                                                    PaperSpot{right, bottom}, PaperSpot{left, bottom}},
                           kBlack, {});
        }
}

// The plate at the top, like one riveted to a drawbar, with the code on it.
void draw_plate(Writing& w, const std::optional<QrCode>& code) {
    Sheet& sheet = w.sheet;
    const Trailer* trailer = w.job.only<Trailer>();
    const Visit* visit = w.job.only<Visit>();
    const Type big{Face::bold, 26, kBlack}, soft{Face::regular, 9.5, kSoft};
    const double pad = 12, inner = sheet.width() - 2 * pad - (code ? kCode : 0);
    auto name = sheet.lines(unit_or_vin(trailer), big, inner);
    if (name.size() > 2) name.resize(2);
    const std::string what = joined({trailer == nullptr ? "" : std::string_view(trailer->kind),
                                     w.in.at.local_date().text(), fmt::format("revision {}", w.in.revision)},
                                    " · ");
    const std::string who = visit == nullptr ? ""
                                             : joined({visit->customer.empty() ? "" : "for " + visit->customer,
                                                       "by " + joined({visit->technician, visit->company}, ", ")},
                                                      " · ");
    auto under = sheet.lines(what + (who.empty() ? "" : "\n" + who), soft, inner);
    if (under.size() > 5) under.resize(5);
    const double top = sheet.y(), left = sheet.left(), right = left + sheet.width(), cut = 16;
    const double texts = 2 * pad + soft.leading() * static_cast<double>(1 + under.size()) + 4 +
                         big.leading() * static_cast<double>(name.size());
    const double height = std::max(texts, code ? kCode + 8 : 0.0);
    const std::array<PaperSpot, 5> plate{PaperSpot{left, top}, PaperSpot{right - cut, top}, PaperSpot{right, top + cut},
                                         PaperSpot{right, top + height}, PaperSpot{left, top + height}};
    sheet.canvas().polygon(plate, {}, kBlack, 2);
    if (code) draw_code(sheet.canvas(), *code, {right - kCode - 8, top + (height - kCode) / 2});
    double y = top + pad;
    const auto put = [&](const std::string& line, const Type& type) {
        sheet.line_at({left + pad, y}, line, type);
        y += type.leading();
    };
    put("Trailer hand-over record", soft);
    for (const std::string& line : name) put(line, big);
    y += 4;
    for (const std::string& line : under) put(line, soft);
    sheet.move_to(top + height + 10);
}

void draw_sign_off(Writing& w) {
    if (const SignOff* sign = w.job.only<SignOff>()) {
        const std::string acknowledged =
            sign->acknowledged.empty() ? std::string()
                                       : fmt::format("\nRead and acknowledged at signing: “{}”", sign->acknowledged);
        w.sheet.framed(fmt::format("Signed off by {}, {}\n“{}”{}{}", sign->by, w.time(sign->at), sign->statement,
                                   acknowledged, w.job.amendments.empty() ? "" : "\nAmended since: see ‘Amendments’."));
        return;
    }
    w.sheet.framed("NOT SIGNED OFF\nThis record is not finished; anything in it may still change.", kStrong);
}

// One line a thing, its places behind it: "Brake pads: worn" → "Axle 1 left, Axle 1 right".
struct Grouped {
    std::string what, where, note;
};
void add_to(std::vector<Grouped>& groups, const std::string& what, const std::string& where, const std::string& note) {
    for (Grouped& group : groups)
        if (group.what == what && group.note == note) {
            if (group.where.find(where) == std::string::npos) group.where += ", " + where;
            return;
        }
    groups.push_back({what, where, note});
}

std::string more_text(std::size_t all, std::size_t shown, const char* where) {
    return all > shown ? fmt::format("And {} more: {}.", all - shown, where) : std::string();
}

void draw_done(Writing& w) {
    std::vector<Grouped> done;
    for (const Grade grade : {Grade::do_not_tow, Grade::repair, Grade::watch, Grade::serviceable})
        for (const Finding& f : w.job.all<Finding>())
            if (f.grade == grade && f.outcome == Outcome::repaired)
                add_to(done, joined({capital(f.component), f.defect}, ": "), place_name(f.place), f.outcome_note);
    w.sheet.heading("What was done");
    if (done.empty()) w.sheet.paragraph("Nothing is recorded as repaired.");
    std::vector<Labelled> rows;
    for (std::size_t i = 0; i < std::min(done.size(), kMostDone); ++i)
        rows.push_back({"Repaired", joined({done[i].what, done[i].where, done[i].note}, " · ")});
    w.sheet.labelled(rows, 64);
    if (done.size() > kMostDone) w.sheet.paragraph(more_text(done.size(), kMostDone, "see the findings"), kSmall);
    const WorkLog log = work_log(w.job);
    if (log.checks.empty()) return;
    const auto proved = std::count_if(log.checks.begin(), log.checks.end(), [](const auto& c) { return c.proved; });
    w.sheet.paragraph(fmt::format(
        "Torques, bearings and levels looked at again: {} of {} as planned{}.", proved, log.checks.size(),
        static_cast<std::size_t>(proved) == log.checks.size() ? "" : "; what differs stands in the work log"));
}

bool told_as_declined(const std::vector<DeclinedLine>& declined, const Finding& finding) {
    for (const DeclinedLine& line : declined)
        if (std::find(line.findings.begin(), line.findings.end(), &finding) != line.findings.end()) return true;
    return false;
}

// What was declined, and all else that is still graded 'repair' or 'do not tow': the gravest first, in plain words.
void draw_not_done(Writing& w) {
    std::vector<DeclinedLine> declined = declined_lines(w.job);
    std::vector<std::pair<Grade, std::string>> lines;
    for (const DeclinedLine& line : declined) lines.emplace_back(line.worst, declined_text(line));
    for (const Grade grade : {Grade::do_not_tow, Grade::repair}) {
        std::vector<Grouped> open;
        for (const Finding& f : w.job.all<Finding>())
            if (f.grade == grade && f.outcome != Outcome::repaired && !told_as_declined(declined, f))
                add_to(open, joined({capital(f.component), f.defect}, ": "), place_name(f.place),
                       joined({capital(name_of(f.outcome)), f.outcome_note}, ": "));
        for (const Grouped& group : open)
            lines.emplace_back(grade,
                               fmt::format("{}: {}, {}. {}.", grade_text(grade), group.what, group.where, group.note));
    }
    if (lines.empty()) return;
    std::stable_sort(lines.begin(), lines.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    w.sheet.heading("What was not done");
    for (std::size_t i = 0; i < std::min(lines.size(), kMostOpen); ++i)
        w.sheet.paragraph(lines[i].second, lines[i].first == Grade::do_not_tow ? kStrong : kBody);
    if (lines.size() > kMostOpen) w.sheet.paragraph(more_text(lines.size(), kMostOpen, "see the findings"), kStrong);
}

std::string range(std::int64_t low, std::int64_t high, const std::string& currency) {
    return low == high ? fmt::format("{} {}", money_text(low), currency)
                       : fmt::format("{} to {} {}", money_text(low), money_text(high), currency);
}

std::string answered_by(const Job& job, const Quote& quote) {
    for (const LineAnswer& answer : answers_to(job, quote))
        if (answer.accepted())
            return fmt::format("{}, {}", answer.decision->name, answer.decision->at.local_date().text());
    return {};
}

void draw_price(Writing& w) {
    std::vector<Labelled> rows;
    for (const Quote& quote : w.job.all<Quote>()) {
        const auto total = accepted_total(w.job, quote);
        const std::string by = answered_by(w.job, quote);
        if (quote.state == QuoteState::changed || by.empty() || !total) continue;
        rows.push_back({"Accepted", range(total->low, total->high, quote.currency) + " with taxes (quote ‘" +
                                        quote.name + "’). Yes by " + by});
        if (total->cores > 0)
            rows.push_back({"Deposits", range(total->cores, total->cores, quote.currency) +
                                            ", given back when the old parts are returned"});
    }
    if (rows.empty()) return;
    w.sheet.heading("The price");
    w.sheet.labelled(rows, 64);
}

// A line each; whose figures they are once for all that share a source.
void draw_next(Writing& w) {
    if (w.in.due.empty()) return;
    w.sheet.heading("Next dates");
    std::vector<Labelled> rows;
    std::vector<Grouped> sources;
    for (const Recheck& due : w.in.due) {
        rows.push_back({capital(due.title), due.words});
        add_to(sources, due.source, due.title, "");
    }
    w.sheet.labelled(rows, 235);
    for (const Grouped& source : sources)
        w.sheet.paragraph(sources.size() == 1 ? capital(source.what) + "."
                                              : fmt::format("{}: {}.", capital(source.where), source.what),
                          kSmall);
}

}  // namespace

std::string manifest_line(const ReportInputs& in) {
    return in.job_sha256 + "  data/job.json";
}

Result<> draw_customer(Writing& w) {
    std::optional<QrCode> code;
    if (!w.in.job_sha256.empty()) {
        COTTER_ASSIGN(code, qr_code(manifest_line(w.in)));
    }
    draw_plate(w, code);
    draw_sign_off(w);
    draw_towing(w, kMostReasons);
    draw_done(w);
    draw_not_done(w);
    draw_price(w);
    draw_next(w);
    return {};
}

}  // namespace cotter
