// One function a kind of row.
#include "app/cli/office_json.h"

namespace cotter::cli {

namespace {

std::string word(const std::optional<Grade>& grade) {
    return grade ? std::string(name_of(*grade)) : std::string();
}

// The rows inside the answers. A class, so that a list of any of them finds its function.
struct Rows {
    static Json of(const Money& money) { return {{"minor", money.minor}, {"currency", money.currency}}; }

    static Json of(const ledger::PacketLine& p) {
        return {{"fingerprint", p.fingerprint},
                {"name", p.name},
                {"job", p.job},
                {"revision", p.revision},
                {"handed_over", p.handed_over.text()},
                {"technician", p.technician},
                {"signer", p.signer},
                {"standing", name_of(p.standing)},
                {"role", name_of(p.role)},
                {"conflict", p.conflict},
                {"chain_broken", p.chain_broken},
                {"newer_format", p.newer_format},
                {"accepted", p.accepted}};
    }

    static Json of(const Forecast& f) {
        Json points = Json::array();
        for (const ForecastPoint& p : f.points)
            points.push_back({{"date", p.date.text()}, {"way", p.way}, {"thickness_mm", p.thickness}});
        return {
            {"place", f.place.text()}, {"what", f.what},     {"where", f.where},       {"says", f.says},
            {"limit", f.limit},        {"source", f.source}, {"way_unit", f.way_unit}, {"points", std::move(points)}};
    }

    static Json of(const ledger::TorqueLine& t) {
        return {{"job", t.job},
                {"visit", t.visit.text()},
                {"place", t.torque.place.text()},
                {"joint", t.torque.joint},
                {"target", t.torque.target ? t.torque.target->text() : ""},
                {"complete", t.complete},
                {"retorque", t.retorque},
                {"first_job", t.first_job}};
    }

    static Json of(const ledger::FindingLine& f) {
        return {{"job", f.job},
                {"visit", f.visit.text()},
                {"open", f.open},
                {"settled_by", f.settled_by},
                {"finding", to_json_value(f.finding)}};
    }

    static Json of(const ledger::RevisionChange& c) {
        return {{"job", c.job},
                {"revision", c.revision},
                {"record", name_of(c.kind)},
                {"place", c.place ? c.place->text() : ""},
                {"what", c.what},
                {"before", c.before},
                {"now", c.now},
                {"less_severe", c.eased()},
                {"at", c.at ? c.at->text() : ""},
                {"by", c.by},
                {"reason", c.reason}};
    }

    static Json of(const ledger::PhotoPair& p) {
        return {{"job", p.job},       {"visit", p.visit.text()}, {"place", p.place.text()}, {"slot", name_of(p.slot)},
                {"before", p.before}, {"after", p.after}};
    }

    static Json of(const ledger::YearCost& y) { return {{"year", y.year}, {"cost", of(y.cost)}, {"visits", y.visits}}; }

    static Json of(const ledger::Costs& c) {
        Json out = {{"years", list(c.years)}, {"total", list(c.total)}, {"miles_from", c.miles_from}};
        if (c.miles) out["miles"] = *c.miles;
        out["per_1000_miles"] = list(c.per_1000_miles);
        return out;
    }

    // null: not made yet
    static Json of(const std::optional<ledger::TowLine>& t) {
        if (!t) return nullptr;
        return {{"outcome", name_of(t->outcome)},
                {"says", t->says},
                {"reason", t->reason},
                {"looked_at", t->looked_at},
                {"of", t->of},
                {"essential_open", t->essential_open},
                {"trip_check_due", t->trip_check_due},
                {"as_of", t->as_of.text()},
                {"runs_out", t->runs_out ? t->runs_out->text() : ""}};
    }

    static Json of(const ledger::TrailerLine& t) {
        return {{"trailer", t.key},
                {"towing", of(t.tow)},
                {"unit", t.unit},
                {"plate", t.plate},
                {"vin", t.vin},
                {"kind", t.kind},
                {"maker", t.maker},
                {"axle_models", t.axle_models},
                {"visits", t.visits},
                {"first", t.first.text()},
                {"last", t.last.text()},
                {"customer", t.customer},
                {"place", t.place},
                {"technician", t.technician},
                {"open_findings", t.open_findings},
                {"worst", word(t.worst)}};
    }

    static Json of(const ReadingChange& c) {
        return {{"place", c.place.text()},
                {"what", c.what},
                {"where", c.where},
                {"before", c.before ? c.before->text() : ""},
                {"now", c.now ? c.now->text() : ""},
                {"change", c.change}};
    }

    template <class T>
    static Json list(const std::vector<T>& rows) {
        Json out = Json::array();
        for (const T& row : rows) out.push_back(of(row));
        return out;
    }
};

}  // namespace

Json as_json(const ledger::Receipt& r) {
    return {{"path", r.path},         {"outcome", name_of(r.arrival)}, {"why", r.why},     {"job", r.job},
            {"revision", r.revision}, {"fingerprint", r.fingerprint},  {"bytes", r.bytes}, {"at", r.at.text()},
            {"number", r.number}};
}

Json as_json(const ledger::JobLine& j) {
    return {{"job", j.job},
            {"trailer", j.trailer},
            {"revision", j.revision},
            {"opened", j.opened.text()},
            {"handed_over", j.handed_over.text()},
            {"unit", j.unit},
            {"plate", j.plate},
            {"vin", j.vin},
            {"place", j.place},
            {"customer", j.customer},
            {"technician", j.technician},
            {"company", j.company},
            {"findings", j.findings},
            {"open_findings", j.open_findings},
            {"worst", word(j.worst)},
            {"flagged", j.flagged},
            {"conflict", j.conflict}};
}

Json as_json(const ledger::Hit& hit) {
    Json out = as_json(hit.job);
    out["towing"] = Rows::of(hit.tow);
    out["found_in"] = hit.field;
    out["text"] = hit.text;
    return out;
}

Json as_json(const ledger::TrailerLine& trailer) {
    return Rows::of(trailer);
}

Json as_json(const ledger::TrailerPage& p) {
    Json out = Rows::of(p.trailer);
    out["timeline"] = list_json(p.visits);
    out["findings"] = Rows::list(p.findings);
    out["changes"] = Rows::list(p.changes);
    out["wear"] = Rows::list(p.wear);
    out["torques"] = Rows::list(p.torques);
    out["costs"] = Rows::of(p.costs);
    out["pairs"] = Rows::list(p.pairs);
    out["packets"] = Rows::list(p.packets);
    return out;
}

Json as_json(const ledger::DueRow& r) {
    return {{"day", r.day.text()},
            {"due", r.due ? r.due->text() : ""},
            {"kind", name_of(r.kind)},
            {"unit", r.unit},
            {"title", r.title},
            {"where", r.where},
            {"customer", r.customer},
            {"place", r.place},
            {"words", r.words},
            {"source", r.source},
            {"law", r.law},
            {"trailer", r.trailer},
            {"job", r.job},
            {"rule", r.rule}};
}

Json as_json(const ledger::OrderRow& r) {
    return {{"supplier", r.supplier}, {"part_number", r.part_number}, {"title", r.title}, {"packs", r.packs},
            {"price", r.price},       {"cost", Rows::of(r.cost)},     {"units", r.units}, {"jobs", r.jobs}};
}

Json as_json(const ledger::AxleFailure& r) {
    return {{"axle_model", r.axle_model}, {"component", r.component}, {"defect", r.defect},
            {"findings", r.findings},     {"trailers", r.trailers},   {"trailers_with_model", r.trailers_with_model},
            {"worst", word(r.worst)}};
}

Json as_json(const ledger::Comparison& c) {
    return {{"before", as_json(c.before)},        {"now", as_json(c.now)},      {"readings", Rows::list(c.readings)},
            {"appeared", Rows::list(c.appeared)}, {"gone", Rows::list(c.gone)}, {"stayed", Rows::list(c.stayed)}};
}

}  // namespace cotter::cli
