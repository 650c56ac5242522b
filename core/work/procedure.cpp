// Reading procedures, and finding what is wrong with them.
#include "core/work/procedure.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <set>

#include "core/survey/json_visitors.h"

namespace cotter {

namespace {

constexpr std::uint64_t kLargestFile = 1u << 20;
constexpr std::string_view kEnding = ".procedure.json";

struct Common {
    std::string standing;
    std::vector<Caution> cautions;
    std::vector<BearingMethod> bearing_methods;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("standing", s.standing);
        f.must("cautions", s.cautions);
        f.must("bearing_methods", s.bearing_methods);
    }
};

template <class T>
Result<T> read_as(Files& files, const std::string& path) {
    COTTER_ASSIGN(const Bytes bytes, read_file(files, path, kLargestFile));
    auto json = parse_json(as_text(bytes));
    if (!json) return unexpected(context(json.error(), base_name(path)));
    auto value = fields_from_json<T>(*json);
    if (!value) return unexpected(context(value.error(), base_name(path)));
    return std::move(*value);
}

// Collects what is wrong.
class Inspector {
public:
    explicit Inspector(const WorkBook& book) : book_(book) {}

    std::vector<std::string> run() {
        for (const Procedure& p : book_.procedures)
            for (const Step& s : p.steps)
                if (!steps_.emplace(s.id, WorkBook::Found{&p, &s}).second) say(s, "its id is used twice");
        for (const Procedure& p : book_.procedures)
            for (const Step& s : p.steps) about_step(p, s);
        for (const auto& [id, found] : steps_) walk(id);
        return std::move(out_);
    }

private:
    void say(const Step& step, std::string what) { out_.push_back(fmt::format("step {}: {}", step.id, what)); }

    void about_step(const Procedure& p, const Step& s) {
        if (s.title.empty()) say(s, "it has no title");
        if (s.owner && s.plain.empty()) say(s, "owners see it, but it has no plain words");
        if (s.owner && !p.owner) say(s, "owners see it, but not its procedure");
        if (!s.hold.empty() && s.proofs.empty()) say(s, "a hold point without anything to prove");
        for (const std::string& id : s.cautions)
            if (book_.caution(id) == nullptr) say(s, fmt::format("there is no caution '{}'", id));
        for (const StepNeed& need : s.needs) about_need(p, s, need);
    }

    void about_need(const Procedure& p, const Step& s, const StepNeed& need) {
        const auto it = steps_.find(need.step);
        if (it == steps_.end()) return say(s, fmt::format("it needs {}, which does not exist", need.step));
        const bool corner_wanted = it->second.procedure->scope == Scope::corner;
        if (p.scope == Scope::trailer && corner_wanted && need.reach != StepReach::all)
            say(s, fmt::format("it needs {} at a corner, but does not say at all of them", need.step));
        if (!corner_wanted && need.reach != StepReach::here)
            say(s, fmt::format("{} is not done at corners", need.step));
        if (s.owner && !it->second.step->owner && !need.begun)
            say(s, fmt::format("owners see it, but not {}, which it needs", need.step));
    }

    // Depth first; a step met again while still open closes a circle.
    void walk(const std::string& id) {
        if (closed_.count(id) != 0) return;
        if (!open_.insert(id).second) {
            out_.push_back(fmt::format("step {}: it needs itself, around a circle", id));
            return;
        }
        if (const auto it = steps_.find(id); it != steps_.end())
            for (const StepNeed& need : it->second.step->needs) walk(need.step);
        open_.erase(id);
        closed_.insert(id);
    }

    const WorkBook& book_;
    std::map<std::string, WorkBook::Found> steps_;
    std::set<std::string> open_, closed_;
    std::vector<std::string> out_;
};

}  // namespace

const Procedure* WorkBook::procedure(std::string_view id) const {
    for (const Procedure& p : procedures)
        if (p.id == id) return &p;
    return nullptr;
}

const Caution* WorkBook::caution(std::string_view id) const {
    for (const Caution& c : cautions)
        if (c.id == id) return &c;
    return nullptr;
}

WorkBook::Found WorkBook::step(std::string_view id) const {
    for (const Procedure& p : procedures)
        for (const Step& s : p.steps)
            if (s.id == id) return {&p, &s};
    return {};
}

Result<Procedure> procedure_from_json(std::string_view json) {
    COTTER_ASSIGN(const Json parsed, parse_json(json));
    return fields_from_json<Procedure>(parsed);
}

Result<WorkBook> load_work_book(Files& files, const std::string& folder) {
    COTTER_ASSIGN(Common common, read_as<Common>(files, join_path(folder, "common.json")));
    WorkBook book{std::move(common.standing), std::move(common.cautions), std::move(common.bearing_methods), {}};
    COTTER_ASSIGN(const auto names, files.list(folder));
    for (const std::string& name : names) {
        if (!name.ends_with(kEnding)) continue;
        COTTER_ASSIGN(Procedure procedure, read_as<Procedure>(files, join_path(folder, name)));
        book.procedures.push_back(std::move(procedure));
    }
    if (const auto defects = defects_of(book); !defects.empty())
        return fail(Errc::damaged, "the procedures contradict themselves: " + defects.front(), folder,
                    "install the program again");
    return book;
}

std::vector<std::string> defects_of(const WorkBook& book) {
    return Inspector(book).run();
}

}  // namespace cotter
