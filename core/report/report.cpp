// What the report says, in what order.
#include "core/report/report.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/report/page.h"

namespace cotter {

namespace {

constexpr const char* kStanding =
    "The makers' manuals of axle, brake, wheel and tyre, state and local codes and a licensed or qualified inspector "
    "prevail over anything in this record. It says what was seen, measured and done; it certifies nothing.";

std::string spoken(const Place& place) {
    if (!place.is_corner()) return place.station == Station::trailer ? "whole trailer" : std::string(name_of(place.station));
    std::string text = fmt::format("axle {} from the front, {} side", place.axle, name_of(place.side));
    if (place.wheel != Wheel::only) text += fmt::format(", {} wheel", name_of(place.wheel));
    return text;
}

std::string short_time(const Instant& at) {
    return at.text().replace(10, 1, " ").substr(0, 16);
}

std::string upper(std::string_view text) {
    std::string out(text);
    for (char& c : out)
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return out;
}

// All places that anything is recorded at, corners first.
std::vector<Place> places_of(const Job& job) {
    std::vector<Place> out;
    const auto add = [&](const auto& list) {
        for (const auto& record : list) out.push_back(record.place);
    };
    add(job.all<Shot>());
    add(job.all<Finding>());
    add(job.all<Reading>());
    add(job.all<Torque>());
    add(job.all<Level>());
    std::sort(out.begin(), out.end(), [](const Place& a, const Place& b) {
        return std::pair(!a.is_corner(), a) < std::pair(!b.is_corner(), b);
    });
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

class Writer {
public:
    Writer(const Job& job, const ReportInputs& inputs, PdfPages& pages) : job_(job), inputs_(inputs), pages_(pages) {}

    Result<> write() {
        cover();
        for (const Place& place : places_of(job_)) COTTER_TRY(block(place));
        amendments();
        return {};
    }

private:
    void fact(const std::string& name, const std::string& value) {
        if (!value.empty()) pages_.row({{1, Look::bold}, {4, Look::body}}, {name, value});
    }

    void cover() {
        const Visit& visit = *job_.only<Visit>();
        const Trailer* trailer = job_.only<Trailer>();
        pages_.text(Look::title, fmt::format("Trailer {}", trailer ? trailer->unit : ""));
        pages_.text(Look::body, fmt::format("Record of the visit of {}", short_time(visit.opened)));
        pages_.gap(8);
        if (trailer) trailer_facts(*trailer);
        fact("For", visit.customer);
        fact("By", visit.company.empty() ? visit.technician : visit.technician + ", " + visit.company);
        fact("Where", visit.place);
        fact("Complaint", visit.complaint);
        fact("Load", visit.load == Load::unknown ? "" : std::string(name_of(visit.load)));
        sign_off();
        overview();
        finding_list();
        not_taken();
        pages_.gap(8);
        pages_.text(Look::small, kStanding);
    }

    void trailer_facts(const Trailer& t) {
        fact("Kind", t.kind);
        fact("VIN", t.vin_nonstandard ? t.vin + " (non-standard number, see its photo)" : t.vin);
        fact("Plate", t.plate);
        fact("GVWR", t.gvwr ? t.gvwr->text() : "");
        fact("Tyres", t.tyre_pressure ? fmt::format("{}, {} cold", t.tyre_size, t.tyre_pressure->text()) : t.tyre_size);
        fact("Brakes by", t.actuation == Actuation::none ? "" : std::string(name_of(t.actuation)));
        for (std::size_t i = 0; i < t.axles.size(); ++i) {
            const Axle& a = t.axles[i];
            std::string text = fmt::format("{} wheels, {}, {} hubs", name_of(a.wheels), name_of(a.brake), name_of(a.hub));
            if (a.studs > 0) text += fmt::format(", {} studs {}", a.studs, a.stud_thread);
            if (a.gawr) text += fmt::format(", GAWR {}", a.gawr->text());
            fact(fmt::format("Axle {}", i + 1), text);
        }
    }

    void sign_off() {
        pages_.gap(6);
        const SignOff* s = job_.only<SignOff>();
        if (s == nullptr) return pages_.text(Look::bold, "NOT SIGNED OFF: the work or its record is not finished.");
        fact("Signed off", fmt::format("{} by {}, revision {}", short_time(s->at), s->by, inputs_.revision));
        fact("Statement", s->statement);
    }

    void overview() {
        pages_.heading("By place");
        for (const Place& place : places_of(job_)) {
            std::optional<Grade> worst;
            std::optional<Grade> left;
            for (const Finding& f : job_.all<Finding>()) {
                if (f.place != place) continue;
                worst = std::max(worst.value_or(f.grade), f.grade);
                if (f.outcome != Outcome::repaired) left = std::max(left.value_or(f.grade), f.grade);
            }
            if (!worst) continue;
            pages_.grade_mark(*worst);
            pages_.row({{2, Look::body}, {2, Look::bold}, {2, Look::body}},
                       {spoken(place), fmt::format("found: {}", upper(name_of(*worst))),
                        fmt::format("left: {}", left ? upper(name_of(*left)) : "nothing open")});
        }
    }

    void finding_row(const Finding& f, bool with_place) {
        pages_.grade_mark(f.grade);
        std::string text = fmt::format("{}: {}", f.component, f.defect);
        if (!f.note.empty()) text += fmt::format(". {}", f.note);
        if (!f.todo.empty()) text += fmt::format(". To do: {}", f.todo);
        std::string outcome = f.grade == Grade::serviceable ? "" : std::string(name_of(f.outcome));
        if (!f.outcome_note.empty()) outcome += fmt::format(": {}", f.outcome_note);
        const std::string number = fmt::format("{} {}", finding_number(job_, f.id), upper(name_of(f.grade)));
        pages_.row({{1.5, Look::bold}, {4, Look::body}, {3, Look::body}},
                   {number, with_place ? fmt::format("{} ({})", text, spoken(f.place)) : text, outcome});
    }

    void finding_list() {
        std::vector<const Finding*> open;
        for (const Finding& f : job_.all<Finding>())
            if (f.grade != Grade::serviceable && f.outcome != Outcome::repaired) open.push_back(&f);
        if (open.empty()) return;
        std::stable_sort(open.begin(), open.end(), [](auto* a, auto* b) { return a->grade > b->grade; });
        pages_.heading("Not repaired");
        for (const Finding* f : open) finding_row(*f, true);
    }

    void not_taken() {
        std::vector<std::pair<std::string, std::string>> rows;
        const auto note = [&](const auto& r, const std::string& what) {
            if (r.taken != Taken::measured)
                rows.emplace_back(fmt::format("{}: {}", spoken(r.place), what),
                                  fmt::format("{}: {}", upper(name_of(r.taken)), r.reason));
        };
        for (const Reading& r : job_.all<Reading>()) note(r, r.what);
        for (const Torque& r : job_.all<Torque>()) note(r, r.joint);
        for (const Level& r : job_.all<Level>()) note(r, r.fluid);
        if (rows.empty()) return;
        pages_.heading("Not measured, not accessible");
        for (const auto& [what, why] : rows) pages_.row({{1, Look::body}, {1, Look::body}}, {what, why});
    }

    Result<> block(const Place& place) {
        pages_.new_page();
        std::string title = spoken(place);
        title[0] = upper(title.substr(0, 1))[0];
        pages_.text(Look::title, title);
        COTTER_TRY(photos(place));
        section<Finding>(place, "Findings", [&](const Finding& f) { finding_row(f, false); });
        section<Reading>(place, "Readings", [&](const Reading& r) { reading_row(r); });
        section<Torque>(place, "Torques", [&](const Torque& t) { torque_row(t); });
        section<Level>(place, "Levels", [&](const Level& l) { level_row(l); });
        return {};
    }

    template <class R, class F>
    void section(const Place& place, const char* title, F&& f) {
        bool first = true;
        for (const R& record : job_.all<R>()) {
            if (record.place != place) continue;
            if (first) pages_.heading(title);
            first = false;
            f(record);
        }
    }

    Result<> photos(const Place& place) {
        for (const Stage stage : {Stage::before, Stage::after})
            for (const Shot& shot : job_.all<Shot>()) {
                if (shot.place != place || shot.stage != stage) continue;
                COTTER_ASSIGN(const ReportPicture picture, inputs_.picture(shot));
                const std::string when = short_time(shot.photo.taken.value_or(shot.added));
                pages_.picture(picture, fmt::format("{}: {}, {}{}{}", upper(name_of(stage)), name_of(shot.slot), when,
                                                    shot.note.empty() ? "" : ". ", shot.note));
            }
        pages_.end_pictures();
        return {};
    }

    void reading_row(const Reading& r) {
        std::string values = r.taken == Taken::measured ? "" : fmt::format("{}: {}", upper(name_of(r.taken)), r.reason);
        for (const ReadingPoint& p : r.points) {
            if (!values.empty()) values += ";  ";
            values += p.where.empty() ? "" : p.where + " ";
            values += Amount{p.value, r.unit}.text();
        }
        std::string tool = r.instrument;
        if (r.resolution) tool += fmt::format(" (to {})", Amount{*r.resolution, r.unit}.text());
        pages_.row({{2, Look::bold}, {1, Look::body}, {5, Look::body}, {2, Look::body}, {1.6, Look::small}},
                   {r.what, std::string(name_of(r.stage)), r.note.empty() ? values : values + ". " + r.note, tool,
                    short_time(r.at)});
    }

    void torque_row(const Torque& t) {
        std::string passes = t.taken == Taken::measured ? "" : fmt::format("{}: {}", upper(name_of(t.taken)), t.reason);
        for (std::size_t i = 0; i < t.passes.size(); ++i)
            passes += fmt::format("pass {}: {}, {} of {} in order {}.  ", i + 1, t.passes[i].setting.text(),
                                  t.passes[i].tightened.size(), t.fasteners, fmt::join(t.passes[i].tightened, "-"));
        std::string target = t.target ? fmt::format("target {} ({})", t.target->text(), t.target_source) : "no target entered";
        std::string wrench = t.wrench.empty() ? "" : fmt::format("wrench {}", t.wrench);
        if (t.wrench_calibrated) wrench += fmt::format(", calibrated {}", t.wrench_calibrated->text());
        pages_.row({{2, Look::bold}, {5, Look::body}, {2.5, Look::body}, {1.6, Look::small}},
                   {t.joint, passes, target + ". " + wrench, short_time(t.at)});
    }

    static std::string seen(const LevelSeen& level) {
        std::string text(name_of(level.mark));
        if (level.mark == LevelMark::at) text = "at the mark";
        if (level.offset) text += fmt::format(" the mark by {}", level.offset->text());
        return level.note.empty() ? text : text + ", " + level.note;
    }

    void level_row(const Level& l) {
        std::string text = l.taken == Taken::measured ? fmt::format("before: {}", seen(l.before))
                                                      : fmt::format("{}: {}", upper(name_of(l.taken)), l.reason);
        if (l.added) text += fmt::format(";  added {} of {}", l.added->text(), l.product);
        if (l.after) text += fmt::format(";  after: {}", seen(*l.after));
        if (l.settled) text += fmt::format(", settled {}", l.settled->text());
        pages_.row({{2, Look::bold}, {7.5, Look::body}, {1.6, Look::small}}, {l.fluid, text, short_time(l.at)});
    }

    void amendments() {
        if (job_.amendments.empty()) return;
        pages_.new_page();
        pages_.text(Look::title, "Amended after sign-off");
        for (const Amendment& a : job_.amendments) {
            pages_.heading(fmt::format("{} by {}: {}", short_time(a.at), a.by, a.reason));
            fact("Record", fmt::format("{} {}", name_of(a.kind), a.id));
            fact("Before", a.old_value.empty() ? "there was none" : a.old_value);
            fact("After", a.new_value.empty() ? "taken out" : a.new_value);
        }
    }

    const Job& job_;
    const ReportInputs& inputs_;
    PdfPages& pages_;
};

}  // namespace

Result<Bytes> report_pdf(const Job& job, const ReportInputs& inputs) {
    if (job.id().nil()) return fail(Errc::refused, "there is no job to report on");
    COTTER_ASSIGN(const auto pages, PdfPages::create(inputs));
    COTTER_TRY(Writer(job, inputs, *pages).write());
    return pages->finish();
}

}  // namespace cotter
