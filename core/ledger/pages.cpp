// A trailer's page, one job, two visits side by side.
#include <algorithm>
#include <fmt/format.h>

#include "core/ledger/filing.h"
#include "core/ledger/revisions.h"
#include "core/ledger/rows.h"
#include "core/ledger/towing.h"
#include "core/ledger/visits.h"
#include "core/packet/pack.h"

namespace cotter::ledger {

namespace {

unexpected<Error> no_such_job(const std::string& id) {
    return fail(Errc::not_found, "there is no such job in the ledger", id);
}

Result<std::vector<VisitOnFile>> load_visits(SqlDb& db, const std::string& trailer) {
    std::vector<VisitOnFile> out;
    COTTER_TRY(
        db.each(fmt::format("SELECT {}, job.fingerprint FROM job WHERE job.trailer=$1 ORDER BY job.n", kJobColumns),
                {trailer}, [&](const SqlRows& r) -> Result<> {
                    out.push_back({job_line(r), {}, r.text(kJobColumnCount)});
                    return {};
                }));
    for (VisitOnFile& visit : out) {
        COTTER_ASSIGN(visit.document, load_job_document(db, visit.fingerprint));
    }
    return out;
}

std::vector<Forecast> wear_of(const std::vector<VisitOnFile>& visits, const Rules& rules) {
    std::vector<Job> earlier;
    for (std::size_t i = 0; i + 1 < visits.size(); ++i) earlier.push_back(visits[i].job());
    const Job& newest = visits.back().job();
    std::vector<Limit> limits(rules.limits.begin(), rules.limits.end());
    for (const MakerLimit& figure : newest.all<MakerLimit>()) limits.push_back(limit_of(figure));
    return forecasts_of(newest, earlier, limits);
}

Result<VisitOnFile> load_visit(SqlDb& db, const std::string& id) {
    VisitOnFile out;
    COTTER_ASSIGN(const auto rows,
                  db.query(fmt::format("SELECT {}, job.fingerprint FROM job WHERE job.id=$1", kJobColumns), {id}));
    COTTER_ASSIGN(const bool there, rows->next());
    if (!there) return no_such_job(id);
    out.line = job_line(*rows);
    COTTER_ASSIGN(out.document, load_job_document(db, rows->text(kJobColumnCount)));
    return out;
}

// As the row says it, but of this moment: the visits are at hand.
Result<TowLine> answer_about(SqlDb& db, const std::string& trailer, const std::vector<VisitOnFile>& visits,
                             const Rules& rules, const Instant& now) {
    Jobs jobs(db);
    for (const VisitOnFile& visit : visits) jobs.keep(visit.fingerprint, visit.job());
    COTTER_ASSIGN(auto witnesses, witnesses_of(db, trailer));
    return towing_of(witnesses, jobs, rules, now);
}

std::vector<FindingLine> open_ones(const VisitOnFile& visit) {
    std::vector<FindingLine> out = findings_of({visit});
    std::erase_if(out, [](const FindingLine& f) { return !f.open; });
    return out;
}

const FindingLine* like(const std::vector<FindingLine>& all, const Finding& finding) {
    for (const FindingLine& line : all)
        if (line.finding.place == finding.place && line.finding.component == finding.component &&
            line.finding.defect == finding.defect)
            return &line;
    return nullptr;
}

}  // namespace

Result<TrailerPage> Ledger::trailer(const std::string& key) {
    TrailerPage out;
    COTTER_ASSIGN(out.trailer, trailer_head(key));
    COTTER_ASSIGN(const auto visits, load_visits(db(), key));
    COTTER_ASSIGN(out.trailer.tow, answer_about(db(), key, visits, rules(), ports().clock.now()));
    for (auto it = visits.rbegin(); it != visits.rend(); ++it) out.visits.push_back(it->line);
    out.wear = wear_of(visits, rules());
    out.torques = torques_of(visits);
    out.findings = findings_of(visits);
    COTTER_ASSIGN(out.changes, changes_of(db(), key, visits));
    out.costs = costs_of(visits);
    out.pairs = pairs_of(visits);
    out.trailer.open_findings = 0;
    out.trailer.worst.reset();
    for (const FindingLine& line : out.findings) {
        if (!line.open) continue;
        ++out.trailer.open_findings;
        out.trailer.worst = std::max(out.trailer.worst.value_or(line.finding.grade), line.finding.grade);
    }
    COTTER_TRY(db().each(fmt::format("SELECT {} FROM packet JOIN job ON job.id = packet.job WHERE job.trailer=$1 "
                                     "ORDER BY packet.handed_s DESC, packet.seq DESC",
                                     packet_columns()),
                         {key}, [&](const SqlRows& r) -> Result<> {
                             out.packets.push_back(packet_line(r));
                             return {};
                         }));
    return out;
}

Result<Job> Ledger::job(const std::string& id) {
    COTTER_ASSIGN(VisitOnFile visit, load_visit(db(), id));
    return std::move(visit.document.job);
}

Result<std::vector<PacketPhoto>> Ledger::shots(const std::string& job) {
    COTTER_ASSIGN(VisitOnFile visit, load_visit(db(), job));
    return std::move(visit.document.photos);
}

Result<std::vector<PacketLine>> Ledger::packets(const std::string& job) {
    std::vector<PacketLine> out;
    COTTER_TRY(
        db().each(fmt::format("SELECT {} FROM packet WHERE packet.job=$1 ORDER BY packet.revision DESC, packet.seq",
                              packet_columns()),
                  {job}, [&](const SqlRows& r) -> Result<> {
                      out.push_back(packet_line(r));
                      return {};
                  }));
    return out;
}

Result<Bytes> Ledger::document(const std::string& fingerprint) {
    return load_document(db(), fingerprint);
}

Result<Comparison> Ledger::compare(const std::string& before_job, const std::string& now_job) {
    COTTER_ASSIGN(const VisitOnFile before, load_visit(db(), before_job));
    COTTER_ASSIGN(const VisitOnFile now, load_visit(db(), now_job));
    Comparison out{before.line, now.line, {}, {}, {}, {}};
    out.readings = changes_since(before.job(), now.job(), packet_time(now.job()));
    const auto then = open_ones(before), today = open_ones(now);
    for (const FindingLine& line : today) (like(then, line.finding) ? out.stayed : out.appeared).push_back(line);
    for (const FindingLine& line : then)
        if (like(today, line.finding) == nullptr) out.gone.push_back(line);
    return out;
}

}  // namespace cotter::ledger
