// From a job's records to rows.
#include "core/ledger/derive.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/judge/values.h"
#include "core/quote/answer.h"
#include "core/survey/json_visitors.h"

namespace cotter::ledger {

namespace {

// Texts of lists are one line each.
std::string flat(std::string_view text) {
    std::string out(text);
    std::replace_if(
        out.begin(), out.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; }, ' ');
    return out;
}

void describe(const Job& job, Derived& out) {
    JobLine& line = out.line;
    const Visit& visit = *job.only<Visit>();
    line.job = job.id().text();
    line.opened = visit.opened;
    line.place = flat(visit.place);
    line.customer = flat(visit.customer);
    line.technician = flat(visit.technician);
    line.company = flat(visit.company);
    if (const Trailer* trailer = job.only<Trailer>()) {
        line.unit = flat(trailer->unit);
        line.plate = flat(trailer->plate);
        line.vin = flat(trailer->vin);
        out.kind = flat(trailer->kind);
        out.maker = flat(trailer->maker);
        for (const Axle& axle : trailer->axles) out.models.push_back(flat(axle.model));
    }
    for (const Finding& finding : job.all<Finding>()) {
        ++line.findings;
        if (finding.outcome == cotter::Outcome::repaired || finding.grade == Grade::serviceable) continue;
        ++line.open_findings;
        line.worst = std::max(line.worst.value_or(finding.grade), finding.grade);
    }
}

void derive_findings(const Job& job, Derived& out) {
    const auto& all = job.all<Finding>();
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Finding& f = all[i];
        const auto axle = static_cast<std::size_t>(f.place.axle);
        if (f.grade < Grade::repair || axle < 1 || axle > out.models.size() || out.models[axle - 1].empty()) continue;
        out.findings.push_back(
            {static_cast<int>(i) + 1, flat(f.component), flat(f.defect), f.grade, out.models[axle - 1]});
    }
}

DueKind kind_of(const RecheckRule& rule) {
    switch (rule.after) {
        case Cause::wheel_off:
        case Cause::u_bolts:
            return DueKind::retorque;
        case Cause::hub_oil:
            return DueKind::oil;
        case Cause::inspection:
            return DueKind::inspection;
        default:
            return DueKind::other;
    }
}

void derive_due(const Job& job, const Instant& handed_over, const Rules& rules, Derived& out) {
    if (rules.rechecks == nullptr) return;
    for (const Recheck& r : rechecks(*rules.rechecks, job, handed_over.local_date())) {
        DueRow row;
        row.job = out.line.job;
        for (const RecheckRule& rule : rules.rechecks->rules)
            if (rule.id == r.rule) row.kind = kind_of(rule);
        row.rule = r.rule;
        row.title = r.title;
        row.where = r.places;
        row.due = r.due;
        row.day = r.due.value_or(Date::from_days(handed_over.local_date().days() + 1));
        row.words = r.words;
        row.source = r.source;
        row.law = r.law;
        row.each_trip = r.each_trip && !r.due && r.distances.empty();
        row.revision = out.line.revision;
        out.due.push_back(std::move(row));
    }
}

void derive_orders(const Job& job, Derived& out) {
    int number = 0;
    for (const Quote& quote : job.all<Quote>()) {
        if (quote.state != QuoteState::offered) continue;
        for (const LineAnswer& answer : answers_to(job, quote)) {
            const Offer* offer = answer.line->offer ? job.find(*answer.line->offer) : nullptr;
            if (!answer.accepted() || offer == nullptr || answer.line->packs <= 0 ||
                answer.line->kind != LineKind::parts)
                continue;
            out.orders.push_back({++number, flat(offer->supplier), flat(offer->part_number), flat(offer->title),
                                  answer.line->packs, offer->price, offer->currency});
        }
    }
}

// The texts of a due row as the table keeps them: one list for writing and reading.
template <class Row, class F>
void each_text(Row& row, F&& f) {
    f("job", row.job);
    f("title", row.title);
    f("where", row.where);
    f("words", row.words);
    f("source", row.source);
}

}  // namespace

std::int64_t job_number(const Instant& opened, const JobId& id) {
    const auto& b = id.uuid.bytes;
    const std::int64_t tail = std::int64_t{b[0]} << 12 | std::int64_t{b[1]} << 4 | b[2] >> 4;
    return opened.unix_s * (1 << 20) + tail;
}

Derived derive(const Job& job, int revision, const Instant& handed_over, const Rules& rules) {
    Derived out;
    out.n = job_number(job.only<Visit>()->opened, job.id());
    out.line.revision = revision;
    out.line.handed_over = handed_over;
    describe(job, out);
    out.fields = searched_fields(job);
    derive_findings(job, out);
    derive_due(job, handed_over, rules, out);
    derive_orders(job, out);
    return out;
}

std::optional<Date> day_of(const Forecast& f) {
    if (f.points.empty()) return std::nullopt;
    const Date last = f.points.back().date;
    if (f.answer == WearAnswer::at_limit) return last;
    if (f.answer != WearAnswer::told) return std::nullopt;
    const double days = static_cast<double>(last.days() - f.points.front().date.days());
    const double way = f.points.back().way - f.points.front().way;
    if (days <= 0 || way <= 0) return std::nullopt;
    const double left = f.life.plan * days / way;  // as fast as between the visits
    constexpr double kFar = 365.0 * 100;
    return left > kFar ? std::nullopt : std::optional(Date::from_days(last.days() + static_cast<std::int64_t>(left)));
}

std::vector<DueRow> wear_due(std::span<const Job> visits, const Rules& rules) {
    std::vector<DueRow> out;
    if (visits.size() < 2) return out;
    const Job& newest = visits.back();
    std::vector<Limit> limits(rules.limits.begin(), rules.limits.end());
    for (const MakerLimit& figure : newest.all<MakerLimit>()) limits.push_back(limit_of(figure));
    for (const Forecast& f : forecasts_of(newest, visits.first(visits.size() - 1), limits)) {
        const auto day = day_of(f);
        if (!day) continue;
        DueRow row;
        row.job = newest.id().text();
        row.kind = DueKind::wear;
        row.rule = fmt::format("wear-{}-{}", f.place.text(), f.what);
        row.title = fmt::format("{} reaches its limit", f.what);
        row.where = f.place.text();
        row.due = day;
        row.day = *day;
        row.words = fmt::format("about {}: {}", day->text(), f.says);
        row.source = fmt::format("{}; {}", f.limit, f.source);
        out.push_back(std::move(row));
    }
    return out;
}

std::string due_text(const DueRow& row) {
    Json out = Json::object();
    each_text(row, [&](const char* name, const std::string& text) {
        if (!text.empty()) out[name] = text;
    });
    if (row.law) out["law"] = true;
    if (row.due) out["due"] = row.due->text();
    out["revision"] = row.revision;
    return compact_json(out);
}

DueRow due_from_text(std::string_view text) {
    DueRow row;
    const auto parsed = parse_json(text);
    if (!parsed || !parsed->is_object()) return row;
    const Json& json = *parsed;
    each_text(row, [&](const char* name, std::string& into) { into = json.value(name, std::string()); });
    row.law = json.value("law", false);
    row.revision = json.value("revision", 1);
    if (auto due = Date::parse(json.value("due", std::string()))) row.due = *due;
    return row;
}

}  // namespace cotter::ledger
