// What is derived from the packet in view, and the trailers that it touches.
#include <algorithm>
#include <fmt/format.h>

#include "core/ledger/filing.h"

namespace cotter::ledger {

namespace {

constexpr std::size_t kVisitsForWear = 10;  // the newest ones; older readings say little and cost the same

std::int64_t number(bool b) {
    return b ? 1 : 0;
}

std::int64_t number(std::size_t n) {
    return static_cast<std::int64_t>(n);
}

std::string lines(const std::vector<std::string>& all) {
    std::string out;
    for (const std::string& one : all) out += one + "\n";
    return out;
}

}  // namespace

// Where the packet in view has not changed, only its marks are looked at, and whether the others forbid towing.
Result<> Filing::show(const Shown& shown, const CheckedPacket* fresh) {
    COTTER_ASSIGN(const std::string before, db_.text("SELECT fingerprint FROM job WHERE id=$1", {shown.job}));
    if (before == shown.fingerprint) {
        COTTER_ASSIGN(const std::string trailer, db_.text("SELECT trailer FROM job WHERE id=$1", {shown.job}));
        answers_.insert(trailer);
        return db_.run("UPDATE job SET flagged=$1, conflict=$2 WHERE id=$3 AND (flagged<>$1 OR conflict<>$2)",
                       {number(shown.flagged), number(shown.conflict), shown.job});
    }
    COTTER_TRY(forget(shown.job));
    Derived d;
    if (fresh != nullptr && fresh->fingerprint == shown.fingerprint) {
        d = derive(fresh->document.job, shown.revision, shown.handed_over, rules_);
    } else {
        COTTER_ASSIGN(const Job job, load_job(db_, shown.fingerprint));
        d = derive(job, shown.revision, shown.handed_over, rules_);
    }
    // Two jobs opened in the same second whose ids begin alike: the later one moves up.
    for (;; ++d.n) {
        COTTER_ASSIGN(const auto taken, db_.integer("SELECT count(*) FROM job WHERE n=$1", {d.n}));
        if (taken == 0) break;
    }
    return put_job(d, shown);
}

Result<> Filing::forget(const std::string& job) {
    std::int64_t n = 0;
    bool there = false;
    COTTER_TRY(db_.each("SELECT n, trailer, unit_key FROM job WHERE id=$1", {job}, [&](const SqlRows& r) -> Result<> {
        there = true;
        n = r.integer(0);
        trailers_.insert(r.text(1));
        units_.insert(r.text(2));
        return {};
    }));
    if (!there) return {};
    if (db_.engine() == SqlEngine::sqlite)
        COTTER_TRY(db_.run(
            "INSERT INTO search(search, rowid, words) SELECT 'delete', n, words FROM searched WHERE n=$1", {n}));
    else
        COTTER_TRY(db_.run("DELETE FROM search WHERE n=$1", {n}));
    for (const char* table : {"searched", "finding", "recheck", "order_line", "job"})
        COTTER_TRY(db_.run(fmt::format("DELETE FROM {} WHERE n=$1", table), {n}));
    return {};
}

Result<> Filing::put_job(const Derived& d, const Shown& shown) {
    const JobLine& l = d.line;
    const std::string unit = number_key(l.unit), plate = number_key(l.plate), vin = number_key(l.vin);
    std::string trailer = !vin.empty() ? "vin:" + vin : !plate.empty() ? "plate:" + plate : "job:" + l.job;
    if (vin.empty() && !unit.empty()) {
        COTTER_ASSIGN(trailer, trailer_of(unit, "unit:" + unit));
    }
    COTTER_TRY(db_.run(
        "INSERT INTO job(n, id, trailer, fingerprint, revision, opened, opened_day, handed_over, unit, plate, vin, "
        "unit_key, plate_key, vin_key, place, customer, customer_key, technician, technician_key, company, kind, "
        "maker, models, findings, open_findings, worst, flagged, conflict) VALUES($1, $2, $3, $4, $5, $6, $7, $8, $9, "
        "$10, $11, $12, $13, $14, $15, $16, $17, $18, $19, $20, $21, $22, $23, $24, $25, $26, $27, $28)",
        {d.n,
         l.job,
         trailer,
         shown.fingerprint,
         std::int64_t{shown.revision},
         l.opened.text(),
         l.opened.local_date().days(),
         shown.handed_over.text(),
         l.unit,
         l.plate,
         l.vin,
         unit,
         plate,
         vin,
         l.place,
         l.customer,
         name_key(l.customer),
         l.technician,
         name_key(l.technician),
         l.company,
         d.kind,
         d.maker,
         lines(d.models),
         number(l.findings),
         number(l.open_findings),
         std::int64_t{l.worst ? static_cast<int>(*l.worst) : -1},
         number(shown.flagged),
         number(shown.conflict)}));
    trailers_.insert(trailer);
    if (!unit.empty()) units_.insert(unit);
    COTTER_TRY(put_words(d));
    return put_parts(d, trailer);
}

Result<> Filing::put_words(const Derived& d) {
    const std::string words = index_words(d.fields);
    COTTER_TRY(
        db_.run("INSERT INTO searched(n, fields, words) VALUES($1, $2, $3)", {d.n, fields_text(d.fields), words}));
    if (db_.engine() == SqlEngine::sqlite)
        return db_.run("INSERT INTO search(rowid, words) VALUES($1, $2)", {d.n, words});
    return db_.run("INSERT INTO search(n, words) VALUES($1, array_to_tsvector(string_to_array($2, ' ')))",
                   {d.n, words});
}

Result<> Filing::put_parts(const Derived& d, const std::string& trailer) {
    for (const DerivedFinding& f : d.findings)
        COTTER_TRY(
            db_.run("INSERT INTO finding(n, number, trailer, component, defect, grade, axle_model) VALUES($1, "
                    "$2, $3, $4, $5, $6, $7)",
                    {d.n, std::int64_t{f.number}, trailer, f.component, f.defect,
                     std::int64_t{static_cast<int>(f.grade)}, f.axle_model}));
    for (const DueRow& r : d.due)
        COTTER_TRY(
            db_.run("INSERT INTO recheck(n, rule, trailer, due_day, each_trip, newest, kind, body) VALUES($1, "
                    "$2, $3, $4, $5, 1, $6, $7)",
                    {d.n, r.rule, trailer, r.day.days(), number(r.each_trip), std::int64_t{static_cast<int>(r.kind)},
                     due_text(r)}));
    for (const DerivedOrder& o : d.orders)
        COTTER_TRY(
            db_.run("INSERT INTO order_line(n, number, unit, supplier, part_number, title, packs, price, "
                    "currency) VALUES($1, $2, $3, $4, $5, $6, $7, $8, $9)",
                    {d.n, std::int64_t{o.number}, d.line.unit, o.supplier, o.part_number, o.title, o.packs, o.price,
                     o.currency}));
    return {};
}

// A visit without a VIN belongs to the only VIN that bears its unit; where there are none or several, to the unit.
Result<std::string> Filing::trailer_of(const std::string& unit_key, const std::string& alone) {
    std::vector<std::string> vins;
    COTTER_TRY(db_.each("SELECT DISTINCT vin_key FROM job WHERE unit_key=$1 AND vin_key<>'' LIMIT 2", {unit_key},
                        [&](const SqlRows& r) -> Result<> {
                            vins.push_back(r.text(0));
                            return {};
                        }));
    return vins.size() == 1 ? "vin:" + vins[0] : alone;
}

Result<> Filing::settle_unit(const std::string& unit_key) {
    if (unit_key.empty()) return {};
    COTTER_ASSIGN(const std::string trailer, trailer_of(unit_key, "unit:" + unit_key));
    std::vector<std::int64_t> moved;
    COTTER_TRY(db_.each("SELECT n, trailer FROM job WHERE unit_key=$1 AND vin_key='' AND trailer<>$2",
                        {unit_key, trailer}, [&](const SqlRows& r) -> Result<> {
                            moved.push_back(r.integer(0));
                            trailers_.insert(r.text(1));
                            return {};
                        }));
    for (const std::int64_t n : moved)
        for (const char* table : {"job", "finding", "recheck"})
            COTTER_TRY(db_.run(fmt::format("UPDATE {} SET trailer=$1 WHERE n=$2", table), {trailer, n}));
    if (!moved.empty()) trailers_.insert(trailer);
    return {};
}

Result<> Filing::settle_trailer(const std::string& trailer) {
    answers_.erase(trailer);
    COTTER_TRY(db_.run("DELETE FROM trailer WHERE trailer=$1", {trailer}));
    COTTER_TRY(db_.run("DELETE FROM towing WHERE trailer=$1", {trailer}));
    COTTER_TRY(db_.run("DELETE FROM axle_model WHERE trailer=$1", {trailer}));
    COTTER_ASSIGN(const auto visits, db_.integer("SELECT count(*) FROM job WHERE trailer=$1", {trailer}));
    if (visits == 0) return {};
    COTTER_TRY(
        db_.run("INSERT INTO trailer(trailer, n, visits, first_opened, unit_key) SELECT trailer, n, CAST($1 AS "
                "BIGINT), (SELECT opened FROM "
                "job WHERE trailer=$2 ORDER BY n LIMIT 1), unit_key FROM job WHERE trailer=$2 ORDER BY n DESC LIMIT 1",
                {visits, trailer}));
    std::set<std::string> models;
    COTTER_TRY(db_.each("SELECT models FROM job WHERE trailer=$1", {trailer}, [&](const SqlRows& r) -> Result<> {
        const std::string text = r.text(0);
        for (std::size_t at = 0; at < text.size(); at = text.find('\n', at) + 1)
            models.insert(text.substr(at, text.find('\n', at) - at));
        return {};
    }));
    models.erase("");
    for (const std::string& model : models)
        COTTER_TRY(db_.run("INSERT INTO axle_model(trailer, axle_model) VALUES($1, $2)", {trailer, model}));
    COTTER_ASSIGN(auto witnesses, witnesses_of(db_, trailer));
    COTTER_TRY(settle_answer(trailer, witnesses));
    if (visits > 1) COTTER_TRY(settle_wear(trailer, witnesses));
    return db_.run(
        "UPDATE recheck SET newest=CASE WHEN EXISTS(SELECT 1 FROM recheck later WHERE later.trailer=recheck.trailer "
        "AND later.rule=recheck.rule AND later.n>recheck.n) THEN 0 ELSE 1 END WHERE trailer=$1",
        {trailer});
}

// Reads what the answer has not read yet.
Result<> Filing::settle_wear(const std::string& trailer, const std::vector<Witness>& witnesses) {
    const std::int64_t wear = static_cast<int>(DueKind::wear);
    COTTER_TRY(db_.run("DELETE FROM recheck WHERE trailer=$1 AND kind=$2", {trailer, wear}));
    std::vector<const Witness*> newest;
    for (auto it = witnesses.rbegin(); it != witnesses.rend() && newest.size() < kVisitsForWear; ++it)
        if (it->shown) newest.push_back(&*it);
    std::vector<Job> visits;
    for (auto it = newest.rbegin(); it != newest.rend(); ++it) {
        std::shared_ptr<const Job> job = (*it)->job;
        if (job == nullptr) {
            COTTER_ASSIGN(job, jobs_.get((*it)->fingerprint));
        }
        visits.push_back(*job);
    }
    for (const DueRow& r : wear_due(visits, rules_))
        COTTER_TRY(
            db_.run("INSERT INTO recheck(n, rule, trailer, due_day, each_trip, newest, kind, body) VALUES($1, "
                    "$2, $3, $4, 0, 1, $5, $6)",
                    {newest.front()->n, r.rule, trailer, r.day.days(), wear, due_text(r)}));
    return {};
}

Result<> Filing::settle_answer(const std::string& trailer, std::vector<Witness>& witnesses) {
    if (!now_) return put_off_answer(db_, trailer);
    if (rules_version_.empty()) rules_version_ = rules_version(rules_);
    COTTER_ASSIGN(const TowLine answer, towing_of(witnesses, jobs_, rules_, *now_));
    return put_answer(db_, trailer, answer, rules_version_);
}

Result<> Filing::settle_answer_alone(const std::string& trailer) {
    COTTER_ASSIGN(auto witnesses, witnesses_of(db_, trailer));
    return witnesses.empty() ? Result<>() : settle_answer(trailer, witnesses);
}

Result<> Filing::finish() {
    for (const std::string& unit : std::exchange(units_, {})) COTTER_TRY(settle_unit(unit));
    for (const std::string& trailer : std::exchange(trailers_, {})) COTTER_TRY(settle_trailer(trailer));
    for (const std::string& trailer : std::exchange(answers_, {})) COTTER_TRY(settle_answer_alone(trailer));
    return {};
}

}  // namespace cotter::ledger
