// The rules that records must keep, one function a kind.
#include "core/survey/validate.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/base/bytes.h"
#include "core/base/text.h"
#include "core/survey/look_rules.h"
#include "core/survey/quote_rules.h"
#include "core/survey/work_rules.h"
#include "core/trailer/vin.h"

namespace cotter {

namespace {

constexpr std::size_t kLongestText = 10'000;  // characters; a note longer than this is a paste by mistake

// Of UTF-8: every byte but those that go on with a character.
std::size_t characters(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}
constexpr std::size_t kMostStrokePoints = 500;
constexpr int kMostFasteners = 24;

// Collects problems of one record.
class Findings {
public:
    Findings(std::vector<Problem>& out, RecordKind kind, std::string id) : out_(out), kind_(kind), id_(std::move(id)) {}
    void need(bool good, std::string what, std::string todo = {}) {
        if (!good) out_.push_back({kind_, id_, std::move(what), std::move(todo)});
    }

private:
    std::vector<Problem>& out_;
    RecordKind kind_;
    std::string id_;
};

void check_unit(const std::string& unit, Findings& f) {
    f.need(find_unit(unit) != nullptr, fmt::format("'{}' is not a known unit", one_line(unit, 40)));
}

// Every text of a record must be UTF-8 and of bearable length; every amount's unit must be known.
struct TextGuard {
    Findings& findings;
    template <class T>
    void must(std::string_view name, const T& value) {
        check(name, value);
    }
    template <class T>
    void may(std::string_view name, const T& value) {
        check(name, value);
    }

private:
    void check(std::string_view name, const std::string& text) {
        findings.need(is_utf8(text), fmt::format("the {} is not UTF-8 text", name));
        findings.need(characters(text) <= kLongestText,
                      fmt::format("the {} is longer than {} characters", name, kLongestText), "shorten it");
        findings.need(text.find('\0') == std::string::npos, fmt::format("the {} holds a zero byte", name));
    }
    template <class T>
    void check(std::string_view name, const std::optional<T>& value) {
        if (value) check(name, *value);
    }
    template <class T>
    void check(std::string_view name, const std::vector<T>& list) {
        findings.need(list.size() <= kMostStrokePoints, fmt::format("the list {} is too long", name));
        for (const T& item : list) check(name, item);
    }
    void check(std::string_view, const Amount& amount) { check_unit(amount.unit, findings); }
    template <class T>
    void check(std::string_view, const T& value) {
        if constexpr (HasFields<T>) T::each_field(value, *this);
    }
};

void check_place(const Job& job, const Place& place, Findings& f) {
    const Trailer* trailer = job.only<Trailer>();
    f.need(!place.is_corner() || trailer != nullptr, "the trailer's axles are not known yet", "put the trailer first");
    f.need(trailer == nullptr || trailer->has(place), fmt::format("the trailer has no place {}", place.text()));
}

void check_taken(Taken taken, const std::string& reason, Findings& f) {
    f.need(taken == Taken::measured || !reason.empty(), fmt::format("'{}' needs a reason", name_of(taken)), "say why");
}

void check_kind(const Amount& amount, Quantity wanted, const char* name, Findings& f) {
    const Unit* unit = find_unit(amount.unit);
    f.need(unit == nullptr || unit->quantity == wanted, fmt::format("the {} is in a unit of something else", name));
}

void check(const Job&, const Visit& r, Findings& f) {
    f.need(!r.technician.empty(), "the visit does not say who does it");
    check_visit(r,
                [&](bool good, std::string what, std::string todo) { f.need(good, std::move(what), std::move(todo)); });
}

// A trailer may stay nameless for a while: its axles are picked before a word is typed. The hand-over asks for the
// name.
void check(const Job& job, const Trailer& r, Findings& f) {
    f.need(r.axles.size() <= 4, "a trailer has one to four axles", "leave the axle list empty until they are known");
    for (const Axle& axle : r.axles) {
        f.need(axle.studs == 0 || (axle.studs >= 4 && axle.studs <= 10), "a wheel has 4 to 10 studs");
    }
    check_plate(r,
                [&](bool good, std::string what, std::string todo) { f.need(good, std::move(what), std::move(todo)); });
    const VinCheck vin = check_vin(r.vin);
    f.need(r.vin.empty() || r.vin_nonstandard || vin.verdict == VinVerdict::ok, "the VIN does not check: " + vin.reason,
           "read it again, or mark it as a non-standard number and photograph it");
    const auto& shots = job.all<Shot>();
    const bool plate_shot =
        std::any_of(shots.begin(), shots.end(), [](const Shot& s) { return s.slot == Slot::data_plate; });
    f.need(!r.vin_nonstandard || plate_shot, "a non-standard number needs a photo", "take the data plate's shot first");
}

void check(const Job& job, const Shot& r, Findings& f) {
    check_place(job, r.place, f);
    f.need(from_hex(r.photo.sha256).size() == 32 && ascii_lower(r.photo.sha256) == r.photo.sha256,
           "the shot has no photo in the vault", "take the photo in first");
    f.need(r.photo.width > 0 && r.photo.height > 0 && r.photo.bytes > 0, "the photo's size is missing");
    f.need(r.photo.media_type == "image/jpeg" || r.photo.media_type == "image/png",
           "the photo is neither JPEG nor PNG");
}

void check(const Job& job, const Finding& r, Findings& f) {
    check_place(job, r.place, f);
    f.need(!r.component.empty() && !r.defect.empty(), "a finding names a component and what is seen on it");
}

void check(const Job& job, const Tag& r, Findings& f) {
    f.need(job.find(r.shot) != nullptr, "the tag's shot is not in the job");
    f.need(job.find(r.finding) != nullptr, "the tag's finding is not in the job");
    const std::size_t n = r.points.size();
    const bool right_count = r.shape == TagShape::point ? n == 1 : r.shape == TagShape::stroke ? n >= 2 : n == 2;
    f.need(right_count, fmt::format("a {} cannot have {} points", name_of(r.shape), n));
    for (const TagPoint& p : r.points) {
        const bool inside = p.x >= 0 && p.x <= 1 && p.y >= 0 && p.y <= 1;  // false for NaN too
        f.need(inside, "the tag lies outside the picture");
        if (!inside) break;
    }
}

void check(const Job& job, const Reading& r, Findings& f) {
    check_place(job, r.place, f);
    check_taken(r.taken, r.reason, f);
    check_unit(r.unit, f);
    f.need(!r.what.empty(), "the reading does not say what was measured");
    f.need((r.taken == Taken::measured) == !r.points.empty(),
           r.points.empty() ? "the reading has no value" : "a reading that was not taken cannot have values",
           r.points.empty() ? "enter it, or say 'not measured' or 'not accessible' and why" : "");
    f.need(!r.shot || job.find(*r.shot) != nullptr, "the reading's shot is not in the job");
    f.need(!r.resolution || r.resolution->value() > 0, "a resolution is more than zero");
}

void check_pass(const Torque& r, const Pass& pass, Findings& f) {
    check_kind(pass.setting, Quantity::torque, "wrench setting", f);
    f.need(pass.setting.number.value() > 0, "a wrench setting is more than zero");
    if (pass.at_nut) {
        check_kind(*pass.at_nut, Quantity::torque, "torque at the nut", f);
        f.need(pass.at_nut->number.value() > 0, "a torque at the nut is more than zero");
    }
    f.need(!r.adapter || pass.at_nut, "with an adapter a pass needs its torque at the nut beside the wrench's setting");
    for (const int nut : pass.tightened)
        f.need(nut >= 1 && nut <= r.fasteners, fmt::format("there is no fastener {} among {}", nut, r.fasteners));
}

void check_adapter(const Adapter& adapter, Findings& f) {
    check_kind(adapter.length, Quantity::length, "adapter's length", f);
    check_kind(adapter.wrench_length, Quantity::length, "wrench's length", f);
    check_kind(adapter.angle, Quantity::angle, "adapter's angle", f);
    f.need(adapter.length.number.value() >= 0, "an adapter's length is not below zero");
    f.need(adapter.wrench_length.number.value() > 0, "a wrench's length is more than zero");
}

void check(const Job& job, const Torque& r, Findings& f) {
    check_place(job, r.place, f);
    if (r.target_from) check_place(job, *r.target_from, f);
    if (r.adapter) check_adapter(*r.adapter, f);
    f.need(!r.target_from || r.target, "a target that was taken over is missing");
    check_taken(r.taken, r.reason, f);
    f.need(!r.joint.empty(), "the torque does not say which joint");
    f.need(r.fasteners >= 1 && r.fasteners <= kMostFasteners,
           fmt::format("a joint has 1 to {} fasteners", kMostFasteners));
    f.need(r.taken == Taken::measured || r.passes.empty(), "a joint that was not tightened cannot have passes");
    f.need(r.passes.empty() || !r.wrench.empty(), "the wrench is not named", "enter the wrench's id");
    f.need(!r.target || !r.target_source.empty(), "a target torque needs its source", "enter the document and page");
    if (r.target) check_kind(*r.target, Quantity::torque, "target", f);
    for (const Pass& pass : r.passes) check_pass(r, pass, f);
}

void check(const Job& job, const Level& r, Findings& f) {
    check_place(job, r.place, f);
    check_taken(r.taken, r.reason, f);
    f.need(!r.fluid.empty(), "the level does not say of what");
    if (r.added) {
        check_kind(*r.added, Quantity::volume, "amount added", f);
        f.need(r.added->number.value() >= 0, "what was added cannot be less than nothing");
        f.need(!r.product.empty(), "what was added is not named", "enter what the label says");
    }
    if (r.settled) check_kind(*r.settled, Quantity::time, "settling time", f);
}

void check(const Job& job, const MakerLimit& r, Findings& f) {
    const bool stamped = r.origin == FigureOrigin::stamped;
    f.need(!r.what.empty(), "the figure does not say what it bounds");
    f.need(stamped || (!r.document.empty() && !r.page.empty()), "a maker's figure needs its source",
           "enter the document and the page");
    f.need(!stamped || r.shot, "a stamped figure needs a photo of the stamping", "take its shot first");
    f.need(!r.shot || job.find(*r.shot) != nullptr, "the figure's shot is not in the job");
    f.need(r.axle == 0 || r.axle_model.empty(), "the figure is for an axle model or for one axle, not both");
    if (r.axle != 0) check_place(job, Place::corner(r.axle, Side::left), f);
}

void check(const Job&, const Inspection&, Findings&) {}

void check(const Job& job, const InspectionAnswer& r, Findings& f) {
    f.need(!r.item.empty(), "the answer does not say to which item");
    f.need(r.answer == Answer::ok || !r.remark.empty(), fmt::format("'{}' needs a remark", name_of(r.answer)),
           "say what is wrong, what was done, or why it is not there");
    f.need(job.only<Inspection>() != nullptr, "the job is no periodic inspection", "begin the inspection first");
    const auto& all = job.all<InspectionAnswer>();
    const auto same = [&](const InspectionAnswer& other) { return other.item == r.item && other.id != r.id; };
    f.need(std::none_of(all.begin(), all.end(), same), fmt::format("item {} is answered twice", one_line(r.item, 20)));
}

// A periodic inspection is signed by a named and qualified person (49 CFR 396.19, 396.21, 396.25) or not at all.
void check_inspection_head(const Inspection& r, Findings& f) {
    f.need(!r.inspector.empty() && !r.carrier.empty() && r.date.has_value(),
           "the inspection does not name inspector, carrier and date", "enter them");
    f.need(!r.qualified_by.empty() && !r.brake_qualified_by.empty(),
           "the inspector's qualification for inspections and for brakes is not stated",
           "state both with their evidence, or take the inspection out of the job");
    f.need(!r.statement.empty(), "the inspection lacks the statement that it is accurate and complete", "enter it");
}

// The records of a price and of led work have their rules in files of their own.
template <class R>
void check(const Job& job, const R& r, Findings& f) {
    check_rules(job, r,
                [&](bool good, std::string what, std::string todo) { f.need(good, std::move(what), std::move(todo)); });
}

void check(const Job& job, const SignOff& r, Findings& f) {
    f.need(!r.by.empty() && !r.statement.empty(), "a sign-off needs a name and a statement");
    if (const Inspection* inspection = job.only<Inspection>()) check_inspection_head(*inspection, f);
}

}  // namespace

std::vector<Problem> problems_of(const Job& job, const Record& record) {
    std::vector<Problem> out;
    Findings findings(out, kind_of(record), uuid_of(record).text());
    findings.need(!uuid_of(record).nil(), "the record has no id");
    std::visit(
        [&]<class R>(const R& r) {
            R::each_field(r, TextGuard{findings});
            check(job, r, findings);
        },
        record);
    return out;
}

std::vector<Problem> problems_of(const Job& job) {
    std::vector<Problem> out;
    for (std::size_t i = 0; i < std::variant_size_v<Record>; ++i)
        with_records(job, static_cast<RecordKind>(i), [&](const auto& list) {
            for (const auto& record : list) {
                auto some = problems_of(job, Record{record});
                std::move(some.begin(), some.end(), std::back_inserter(out));
            }
        });
    return out;
}

}  // namespace cotter
