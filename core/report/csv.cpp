// CSV rows.
#include "core/report/csv.h"

#include <initializer_list>

namespace cotter {

namespace {

std::string field(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"') out += '"';
        out += c;
    }
    return out + "\"";
}

void row(std::string& out, std::initializer_list<std::string> fields) {
    bool first = true;
    for (const std::string& text : fields) {
        if (!first) out += ',';
        out += field(text);
        first = false;
    }
    out += "\r\n";
}

std::string text_of(Taken taken) {
    return std::string(name_of(taken));
}

std::string number_of(const std::optional<Amount>& amount) {
    return amount ? amount->number.text() : "";
}

std::string unit_of(const std::optional<Amount>& amount) {
    return amount ? amount->unit : "";
}

void torque_rows(std::string& out, const Torque& t) {
    const std::string calibrated = t.wrench_calibrated ? t.wrench_calibrated->text() : "";
    const auto one = [&](const std::string& pass, const std::string& order, const std::string& nut, const std::string& value,
                         const std::string& unit) {
        row(out, {t.place.text(), t.joint, pass, order, nut, value, unit, number_of(t.target), unit_of(t.target),
                  t.target_source, t.wrench, calibrated, text_of(t.taken), t.reason, t.at.text(), t.by});
    };
    if (t.passes.empty()) one("", "", "", "", "");
    for (std::size_t p = 0; p < t.passes.size(); ++p)
        for (std::size_t i = 0; i < t.passes[p].tightened.size(); ++i)
            one(std::to_string(p + 1), std::to_string(i + 1), std::to_string(t.passes[p].tightened[i]),
                t.passes[p].setting.number.text(), t.passes[p].setting.unit);
}

}  // namespace

std::string readings_csv(const Job& job) {
    std::string out;
    row(out, {"place", "what", "stage", "where", "value", "unit", "resolution", "instrument", "taken", "reason", "note",
              "at", "by"});
    for (const Reading& r : job.all<Reading>()) {
        const auto one = [&](const std::string& where, const std::string& value) {
            row(out, {r.place.text(), r.what, std::string(name_of(r.stage)), where, value, value.empty() ? "" : r.unit,
                      r.resolution ? r.resolution->text() : "", r.instrument, text_of(r.taken), r.reason, r.note,
                      r.at.text(), r.by});
        };
        if (r.points.empty()) one("", "");
        for (const ReadingPoint& p : r.points) one(p.where, p.value.text());
    }
    return out;
}

std::string torques_csv(const Job& job) {
    std::string out;
    row(out, {"place", "joint", "pass", "order", "fastener", "setting", "unit", "target", "target_unit", "target_source",
              "wrench", "wrench_calibrated", "taken", "reason", "at", "by"});
    for (const Torque& t : job.all<Torque>()) torque_rows(out, t);
    return out;
}

std::string levels_csv(const Job& job) {
    std::string out;
    row(out, {"place", "fluid", "product", "before", "before_offset", "before_unit", "added", "added_unit", "after",
              "settled", "settled_unit", "taken", "reason", "at", "by"});
    for (const Level& l : job.all<Level>())
        row(out, {l.place.text(), l.fluid, l.product, std::string(name_of(l.before.mark)), number_of(l.before.offset),
                  unit_of(l.before.offset), number_of(l.added), unit_of(l.added),
                  l.after ? std::string(name_of(l.after->mark)) : "", number_of(l.settled), unit_of(l.settled),
                  text_of(l.taken), l.reason, l.at.text(), l.by});
    return out;
}

}  // namespace cotter
