// `cotter jobs`: what a book holds.
#include "app/cli/workshop.h"
#include "core/judge/forecast.h"
#include "core/judge/judge_job.h"
#include "core/judge/register.h"
#include "core/survey/json_visitors.h"

namespace cotter::cli {

namespace {

struct JobsOptions {
    std::string book;
    bool json = false;
};

// A job of the list and what is to be said of towing by it and the visits before it.
struct Listed {
    JobSummary job;
    std::string answer = "cannot be read";
};

Result<std::vector<Listed>> list(Ports& ports, const std::string& book) {
    COTTER_ASSIGN(const JudgeRegister limits, load_register(ports.files, ports.share));
    COTTER_ASSIGN(const auto shop, open_workshop(ports, book, OpenMode::existing));
    COTTER_ASSIGN(const auto jobs, shop.book->jobs());
    std::vector<Listed> out;
    std::vector<std::pair<std::size_t, Job>> read;
    for (const JobSummary& summary : jobs) {
        out.push_back({summary});
        if (auto job = shop.book->load(summary.id)) read.emplace_back(out.size() - 1, std::move(*job));
    }
    for (const auto& [row, job] : read) {
        std::vector<EarlierVisit> earlier;  // the list goes from the newest to the oldest
        for (const auto& [other_row, other] : read)
            if (other_row > row && same_trailer(job, other)) earlier.push_back({&other, true});
        const TowAnswer tow = answer_towing({job, earlier, limits.limits, ports.clock.now()});
        out[row].answer = name_of(tow.outcome);
    }
    return out;
}

Json as_json(const Listed& listed) {
    const JobSummary& job = listed.job;
    return {{"job", job.id.text()},
            {"opened", job.opened.text()},
            {"unit", job.unit},
            {"customer", job.customer},
            {"place", job.place},
            {"technician", job.technician},
            {"shots", job.shots},
            {"findings", job.findings},
            {"signed_off", job.signed_off},
            {"may_it_be_towed", listed.answer},
            {"worst_grade", job.worst ? std::string(name_of(*job.worst)) : std::string()}};
}

void print(const Listed& listed) {
    const JobSummary& job = listed.job;
    fmt::print("{}  {}  {:<12} {:<26}  {:>3} shots  {:>3} findings  {}  {}\n", job.id.text().substr(0, 8),
               job.opened.text().substr(0, 16), one_line(job.unit, 40), listed.answer, job.shots, job.findings,
               job.signed_off ? "signed off" : "open      ", one_line(job.customer, 60));
}

int run_jobs(Ports& ports, const JobsOptions& options) {
    const auto jobs = list(ports, options.book);
    if (!jobs) return report(jobs.error(), options.json);
    Json all = Json::array();
    for (const Listed& job : *jobs) options.json ? all.push_back(as_json(job)) : print(job);
    if (options.json)
        fmt::print("{}\n", indented_json(all, 2));
    else if (jobs->empty())
        fmt::print("The book holds no jobs yet.\n");
    return kDone;
}

}  // namespace

Command jobs_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<JobsOptions>();
    Parser parser = all.add_command("jobs", "List the jobs of a book, newest first");
    parser.add_option("--book", options->book, "The book's folder").required();
    parser.add_flag("--json", options->json, "Answer in JSON");
    return {parser, [&ports, options] { return run_jobs(ports, *options); }};
}

}  // namespace cotter::cli
