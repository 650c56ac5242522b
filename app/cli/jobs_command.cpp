// `cotter jobs`: what a book holds.
#include "app/cli/workshop.h"
#include "core/survey/json_visitors.h"

namespace cotter::cli {

namespace {

struct JobsOptions {
    std::string book;
    bool json = false;
};

Json as_json(const JobSummary& job) {
    return {{"job", job.id.text()},
            {"opened", job.opened.text()},
            {"unit", job.unit},
            {"customer", job.customer},
            {"place", job.place},
            {"technician", job.technician},
            {"shots", job.shots},
            {"findings", job.findings},
            {"signed_off", job.signed_off},
            {"worst_grade", job.worst ? std::string(name_of(*job.worst)) : std::string()}};
}

void print(const JobSummary& job) {
    fmt::print("{}  {}  {:<12} {:<11}  {:>3} shots  {:>3} findings  {}  {}\n", job.id.text().substr(0, 8),
               job.opened.text().substr(0, 16), one_line(job.unit, 40), job.worst ? name_of(*job.worst) : "-",
               job.shots, job.findings, job.signed_off ? "signed off" : "open      ", one_line(job.customer, 60));
}

int run_jobs(Ports& ports, const JobsOptions& options) {
    auto shop = open_workshop(ports, options.book, OpenMode::existing);
    if (!shop) return report(shop.error(), options.json);
    auto jobs = shop->book->jobs();
    if (!jobs) return report(jobs.error(), options.json);
    Json list = Json::array();
    for (const JobSummary& job : *jobs) options.json ? list.push_back(as_json(job)) : print(job);
    if (options.json)
        fmt::print("{}\n", indented_json(list, 2));
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
