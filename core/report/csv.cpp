// Rows and fields of the tables.
#include "core/report/csv.h"

#include <array>
#include <string_view>
#include <vector>

#include "core/work/wrench.h"

namespace cotter {

namespace {

bool starts_like_formula(std::string_view text) {
    static constexpr std::array<std::string_view, 12> starts{"=",  "+", "-",  "@",  "\t", "\r",
                                                             "\n", "'", "＝", "＋", "－", "＠"};
    for (const auto start : starts)
        if (text.starts_with(start)) return true;
    return false;
}

// A field for the text of a person.
std::string words(std::string_view text) {
    return starts_like_formula(text) ? "'" + std::string(text) : std::string(text);
}

std::string number(const std::optional<Number>& value) {
    return value ? value->text() : std::string();
}

std::string csv_field(std::string_view field) {
    if (field.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(field);
    std::string out = "\"";
    for (const char c : field) {
        if (c == '"') out += '"';
        out += c;
    }
    return out + '"';
}

class Rows {
public:
    explicit Rows(std::string_view header) : out_(std::string(header) + "\r\n") {}

    void add(const std::vector<std::string>& fields) {
        const char* between = "";
        for (const std::string& field : fields) {
            out_ += between + csv_field(field);
            between = ",";
        }
        out_ += "\r\n";
    }
    [[nodiscard]] std::string text() && { return std::move(out_); }

private:
    std::string out_;
};

std::string number(const std::optional<Amount>& amount) {
    return amount ? amount->number.text() : std::string();
}

std::string unit(const std::optional<Amount>& amount) {
    return amount ? amount->unit : std::string();
}

// What of `t` is the same in all its rows, behind its id. `t` in its present form (core/work/wrench.h).
void add_adapter(std::vector<std::string>& row, const Torque& t) {
    const auto amount = [&](auto member) {
        row.push_back(t.adapter ? ((*t.adapter).*member).number.text() : "");
        row.push_back(t.adapter ? ((*t.adapter).*member).unit : "");
    };
    amount(&Adapter::length);
    amount(&Adapter::wrench_length);
    amount(&Adapter::angle);
    row.push_back(t.target_from ? t.target_from->text() : "");
    row.push_back(t.unit_confirmed ? "yes" : "");
}

void add_torque(Rows& rows, const Torque& t, int pass, std::size_t turn) {
    const Pass* of = pass == 0 ? nullptr : &t.passes[static_cast<std::size_t>(pass) - 1];
    const bool nut = of != nullptr && turn > 0;
    const std::optional<Amount> set = of ? std::optional(of->setting) : std::nullopt;
    const std::optional<Amount> got = of ? std::optional(at_nut(*of)) : std::nullopt;
    std::vector<std::string> row{t.place.text(),
                                 words(t.joint),
                                 std::to_string(t.fasteners),
                                 std::string(name_of(t.taken)),
                                 words(t.reason),
                                 of ? std::to_string(pass) : "",
                                 nut ? std::to_string(turn) : "",
                                 nut ? std::to_string(of->tightened[turn - 1]) : "",
                                 number(set),
                                 unit(set),
                                 number(t.target),
                                 unit(t.target),
                                 words(t.target_source),
                                 words(t.found_note),
                                 words(t.wrench),
                                 t.wrench_calibrated ? t.wrench_calibrated->text() : "",
                                 t.at.text(),
                                 words(t.by),
                                 t.id.text(),
                                 number(got),
                                 unit(got)};
    add_adapter(row, t);
    rows.add(row);
}

}  // namespace

std::string readings_csv(const Job& job) {
    Rows rows("place,stage,what,taken,reason,point,value,unit,resolution,instrument,note,at,by,reading_id");
    for (const Reading& r : job.all<Reading>()) {
        const auto add = [&](const std::string& where, const std::string& value, const std::string& in) {
            rows.add({r.place.text(), std::string(name_of(r.stage)), words(r.what), std::string(name_of(r.taken)),
                      words(r.reason), words(where), value, in, number(r.resolution), words(r.instrument),
                      words(r.note), r.at.text(), words(r.by), r.id.text()});
        };
        for (const ReadingPoint& point : r.points) add(point.where, point.value.text(), r.unit);
        if (r.points.empty()) add("", "", r.taken == Taken::measured || r.resolution ? r.unit : "");
    }
    return std::move(rows).text();
}

std::string torques_csv(const Job& job) {
    Rows rows(
        "place,joint,fasteners,taken,reason,pass,order,fastener,setting,unit,target,target_unit,target_source,"
        "found_note,wrench,wrench_calibrated,at,by,torque_id,at_nut,at_nut_unit,adapter_length,adapter_length_unit,"
        "wrench_length,wrench_length_unit,adapter_angle,adapter_angle_unit,target_from,unit_confirmed");
    for (const Torque& recorded : job.all<Torque>()) {
        const Torque t = in_present_form(recorded);
        for (std::size_t pass = 1; pass <= t.passes.size(); ++pass) {
            const std::size_t turns = t.passes[pass - 1].tightened.size();
            for (std::size_t turn = turns == 0 ? 0 : 1; turn <= turns; ++turn)
                add_torque(rows, t, static_cast<int>(pass), turn);
        }
        if (t.passes.empty()) add_torque(rows, t, 0, 0);
    }
    return std::move(rows).text();
}

std::string levels_csv(const Job& job) {
    Rows rows(
        "place,fluid,product,taken,reason,before_mark,before_offset,before_offset_unit,before_note,added,added_unit,"
        "after_mark,after_offset,after_offset_unit,after_note,settled,settled_unit,at,by,level_id");
    for (const Level& l : job.all<Level>()) {
        const LevelSeen after = l.after.value_or(LevelSeen{});
        rows.add({l.place.text(),
                  words(l.fluid),
                  words(l.product),
                  std::string(name_of(l.taken)),
                  words(l.reason),
                  std::string(name_of(l.before.mark)),
                  number(l.before.offset),
                  unit(l.before.offset),
                  words(l.before.note),
                  number(l.added),
                  unit(l.added),
                  l.after ? std::string(name_of(after.mark)) : "",
                  number(after.offset),
                  unit(after.offset),
                  words(after.note),
                  number(l.settled),
                  unit(l.settled),
                  l.at.text(),
                  words(l.by),
                  l.id.text()});
    }
    return std::move(rows).text();
}

}  // namespace cotter
