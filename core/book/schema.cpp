// Migrations, one text a version. Append only: a book of any earlier version must go through the rest of the list.
#include "core/book/schema.h"

#include <array>
#include <fmt/format.h>

namespace cotter {

namespace {

// Method: a record's JSON text is the truth. Columns that tables refer to each other by, or that lists of jobs show,
// are computed from that text by SQLite itself, so they can never say anything else. References are checked at the
// end of a transaction: one edit may bring two records in either order.
constexpr const char* kVersion1 = R"sql(
CREATE TABLE job(
  id TEXT PRIMARY KEY NOT NULL,
  opened TEXT NOT NULL,
  opened_s INTEGER NOT NULL,
  unit TEXT NOT NULL,
  signed_off INTEGER NOT NULL CHECK(signed_off IN (0, 1)),
  changed TEXT NOT NULL
) STRICT;
CREATE INDEX job_by_unit ON job(unit COLLATE NOCASE, opened_s);

CREATE TABLE visit(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  technician TEXT GENERATED ALWAYS AS (json_extract(body, '$.technician')) STORED NOT NULL,
  customer TEXT GENERATED ALWAYS AS (json_extract(body, '$.customer')) STORED,
  place TEXT GENERATED ALWAYS AS (json_extract(body, '$.place')) STORED,
  PRIMARY KEY(job, id),
  CHECK(job = id)
) STRICT;

CREATE TABLE trailer(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  unit TEXT GENERATED ALWAYS AS (json_extract(body, '$.unit')) STORED,
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE shot(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  photo TEXT GENERATED ALWAYS AS (json_extract(body, '$.photo.sha256')) STORED NOT NULL,
  PRIMARY KEY(job, id)
) STRICT;
CREATE INDEX shot_by_photo ON shot(photo);

CREATE TABLE finding(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  grade TEXT GENERATED ALWAYS AS (json_extract(body, '$.grade')) STORED NOT NULL,
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE tag(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  shot TEXT GENERATED ALWAYS AS (json_extract(body, '$.shot')) STORED NOT NULL,
  finding TEXT GENERATED ALWAYS AS (json_extract(body, '$.finding')) STORED NOT NULL,
  PRIMARY KEY(job, id),
  FOREIGN KEY(job, shot) REFERENCES shot(job, id) DEFERRABLE INITIALLY DEFERRED,
  FOREIGN KEY(job, finding) REFERENCES finding(job, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX tag_by_shot ON tag(job, shot);
CREATE INDEX tag_by_finding ON tag(job, finding);

CREATE TABLE reading(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  shot TEXT GENERATED ALWAYS AS (json_extract(body, '$.shot')) STORED,
  PRIMARY KEY(job, id),
  FOREIGN KEY(job, shot) REFERENCES shot(job, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX reading_by_shot ON reading(job, shot);

CREATE TABLE torque(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE level(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE sign_off(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE amendment(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  position INTEGER NOT NULL CHECK(position >= 0),
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, position)
) STRICT;

CREATE TABLE journal(
  seq INTEGER PRIMARY KEY NOT NULL,
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL,
  by TEXT NOT NULL,
  kind TEXT NOT NULL CHECK(kind IN ('edit', 'undo', 'redo')),
  target INTEGER REFERENCES journal(seq) CHECK((target IS NULL) = (kind = 'edit')),
  edit TEXT NOT NULL CHECK(json_valid(edit)),
  inverse TEXT NOT NULL CHECK(json_valid(inverse))
) STRICT;
CREATE INDEX journal_by_job ON journal(job, seq, kind, target);

CREATE TABLE packet(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  revision INTEGER NOT NULL CHECK(revision >= 1),
  content_sha256 TEXT NOT NULL CHECK(length(content_sha256) = 64),
  tagmanifest_sha256 TEXT NOT NULL CHECK(length(tagmanifest_sha256) = 64),
  name TEXT NOT NULL,
  made_at TEXT NOT NULL,
  PRIMARY KEY(job, revision)
) STRICT;
)sql";

// Makers' figures and periodic inspections.
constexpr const char* kVersion2 = R"sql(
CREATE TABLE maker_limit(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  shot TEXT GENERATED ALWAYS AS (json_extract(body, '$.shot')) STORED,
  axle_model TEXT GENERATED ALWAYS AS (json_extract(body, '$.axle_model')) STORED,
  PRIMARY KEY(job, id),
  FOREIGN KEY(job, shot) REFERENCES shot(job, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX maker_limit_by_shot ON maker_limit(job, shot);

CREATE TABLE inspection(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE inspection_answer(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;
)sql";

// What a job needs, what is offered, quoted and decided; and the prices that this device remembers across jobs.
constexpr const char* kVersion3 = R"sql(
CREATE TABLE need(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE offer(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  shot TEXT GENERATED ALWAYS AS (json_extract(body, '$.shot')) STORED,
  PRIMARY KEY(job, id),
  FOREIGN KEY(job, shot) REFERENCES shot(job, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX offer_by_shot ON offer(job, shot);

CREATE TABLE quote(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE decision(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  quote TEXT GENERATED ALWAYS AS (json_extract(body, '$.quote')) STORED NOT NULL,
  PRIMARY KEY(job, id),
  FOREIGN KEY(job, quote) REFERENCES quote(job, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX decision_by_quote ON decision(job, quote);

CREATE TABLE shelf(
  id TEXT PRIMARY KEY NOT NULL CHECK(id = json_extract(body, '$.id')),
  seen TEXT NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body))
) STRICT;
)sql";

// Work led by procedures.
constexpr const char* kVersion4 = R"sql(
CREATE TABLE step_mark(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE bearing_setting(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE pipe_route(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE bleed_count(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;
)sql";

// What was looked at: answers to points, and what tires, chambers and the breakaway test say.
constexpr const char* kVersion5 = R"sql(
CREATE TABLE look(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE sidewall(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE chamber(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE breakaway_test(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;

CREATE TABLE event(
  job TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  id TEXT NOT NULL CHECK(id = json_extract(body, '$.id')),
  position INTEGER NOT NULL,
  body TEXT NOT NULL CHECK(json_valid(body)),
  PRIMARY KEY(job, id)
) STRICT;
)sql";

constexpr std::array kMigrations{kVersion1, kVersion2, kVersion3, kVersion4, kVersion5};
static_assert(kMigrations.size() == kBookVersion);

}  // namespace

Result<> bring_up_to_date(Sqlite& db) {
    COTTER_ASSIGN(const std::int64_t version, db.integer("PRAGMA user_version"));
    if (version == kBookVersion) return {};
    COTTER_ASSIGN(Transaction transaction, Transaction::begin(db));
    for (auto v = static_cast<std::size_t>(version); v < kMigrations.size(); ++v)
        COTTER_TRY(db.run_script(kMigrations[v]));
    COTTER_TRY(db.run(fmt::format("PRAGMA application_id={}", kBookApplicationId)));
    COTTER_TRY(db.run(fmt::format("PRAGMA user_version={}", kBookVersion)));
    return transaction.commit();
}

}  // namespace cotter
