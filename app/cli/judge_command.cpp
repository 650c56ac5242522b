// `cotter judge`: may it be towed, with the reasons, what is not known, and what is to come.
#include "app/cli/workshop.h"
#include "core/judge/judge_job.h"
#include "core/judge/register.h"
#include "core/survey/json_visitors.h"

namespace cotter::cli {

namespace {

struct JudgeOptions {
    std::string book;
    std::string job;
    std::string as_of;  // RFC 3339; empty: now
    bool json = false;
};

// Answers keep for a time: whoever plans a trip asks for its day.
Result<Instant> instant_of(const Ports& ports, const std::string& as_of) {
    if (as_of.empty()) return ports.clock.now();
    auto at = Instant::parse(as_of);
    if (!at)
        return fail(Errc::refused, "this is no time: " + one_line(as_of, 60), "--as-of",
                    "write it like 2026-05-14T16:20:00-05:00");
    return at;
}

Result<Summary> judge(Ports& ports, const JudgeOptions& options) {
    COTTER_ASSIGN(const Instant as_of, instant_of(ports, options.as_of));
    COTTER_ASSIGN(const JudgeRegister limits, load_register(ports.files, ports.share));
    COTTER_ASSIGN(auto shop, open_workshop(ports, options.book, OpenMode::existing));
    COTTER_ASSIGN(const JobId id, shop.book->find_job(options.job));
    COTTER_ASSIGN(const Job job, shop.book->load(id));
    COTTER_ASSIGN(const auto earlier, earlier_visits(*shop.book, job));
    return judge_job(job, limits.limits, {earlier, as_of});
}

Json as_json(const Ground& r) {
    return {{"place", r.place.text()},   {"axle", r.axle},          {"component", r.component}, {"subject", r.subject},
            {"grade", name_of(r.grade)}, {"says", r.says},          {"reading", r.reading},     {"limit", r.limit},
            {"source", r.source},        {"mark", name_of(r.mark)}, {"arithmetic", r.steps},    {"todo", r.todo}};
}

Json as_json(const Unknown& u) {
    return {{"place", u.place.text()}, {"axle", u.axle}, {"component", u.component}, {"subject", u.subject},
            {"because", u.because},    {"todo", u.todo}, {"essential", u.essential}};
}

Json as_json(const Judgement& node) {
    Json out{{"name", node.name}, {"grade", node.grade ? std::string(name_of(*node.grade)) : "cannot tell"}};
    for (const Ground& r : node.reasons) out["reasons"].push_back(as_json(r));
    for (const Unknown& u : node.unknowns) out["unknown"].push_back(as_json(u));
    for (const Judgement& part : node.parts) out["parts"].push_back(as_json(part));
    return out;
}

Json as_json(const Forecast& f) {
    Json points = Json::array();
    for (const ForecastPoint& p : f.points)
        points.push_back({{"date", p.date.text()}, {"way", p.way}, {"thickness_mm", p.thickness}});
    return {{"place", f.place.text()}, {"what", f.what},         {"where", f.where},
            {"says", f.says},          {"arithmetic", f.steps},  {"limit", f.limit},
            {"source", f.source},      {"way_unit", f.way_unit}, {"points", points}};
}

Json as_json(const Summary& s) {
    Json forecasts = Json::array();
    for (const Forecast& f : s.forecasts) forecasts.push_back(as_json(f));
    return {{"may_it_be_towed", name_of(s.tow.outcome)},
            {"answer", s.answer},
            {"caveat", s.caveat},
            {"now", as_json(s.now)},
            {"found", as_json(s.found)},
            {"forecasts", forecasts}};
}

void print(const Judgement& node, int depth) {
    if (node.reasons.empty() && node.unknowns.empty() && node.parts.empty()) return;
    const std::string indent(static_cast<std::size_t>(depth) * 2, ' ');
    fmt::print("{}{}: {}\n", indent, one_line(node.name), node.grade ? name_of(*node.grade) : "cannot tell");
    for (const Ground& r : node.reasons) {
        const std::string what = r.says.starts_with(r.subject + ":") ? "" : r.subject + ": ";
        fmt::print("{}  [{}] {}{}\n{}      {}\n", indent, name_of(r.grade), one_line(what), one_line(r.says, 400),
                   indent, one_line(r.source, 400));
        for (const std::string& step : r.steps) fmt::print("{}      {}\n", indent, one_line(step, 400));
        if (!r.todo.empty()) fmt::print("{}      -> {}\n", indent, one_line(r.todo, 400));
    }
    for (const Unknown& u : node.unknowns)
        fmt::print("{}  [cannot tell] {}: {}\n", indent, one_line(u.subject), one_line(u.because, 400));
    for (const Judgement& part : node.parts) print(part, depth + 1);
}

void print(const Summary& s) {
    fmt::print("May it be towed? {}\n{}\n\n", one_line(s.answer, 1000), s.caveat);
    print(s.now, 0);
    if (!s.forecasts.empty()) fmt::print("\nTo come:\n");
    for (const Forecast& f : s.forecasts)
        fmt::print("  {}, {}{}{}: {}\n", f.place.text(), one_line(f.what), f.where.empty() ? "" : ", ",
                   one_line(f.where), one_line(f.says, 400));
}

int run_judge(Ports& ports, const JudgeOptions& options) {
    const auto summary = judge(ports, options);
    if (!summary) return report(summary.error(), options.json);
    if (options.json)
        fmt::print("{}\n", indented_json(as_json(*summary), 2));
    else
        print(*summary);
    return kDone;
}

}  // namespace

Command judge_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<JudgeOptions>();
    Parser parser = all.add_command("judge", "Say whether the trailer may be towed, with the reasons");
    parser.add_option("--book", options->book, "The book's folder").required();
    parser.add_option("job", options->job, "The job: its id, the start of it, or the trailer's unit").required();
    parser.add_option("--as-of", options->as_of, "The time to answer for, such as 2026-05-14T16:20:00-05:00 (now)");
    parser.add_flag("--json", options->json, "Answer in JSON");
    return {parser, [&ports, options] { return run_judge(ports, *options); }};
}

}  // namespace cotter::cli
