// Every change to a job is an Edit: a value that a pure function applies, that the book commits and journals,
// and that has an exact inverse. One Edit is one step of undo.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <type_traits>
#include <variant>
#include <vector>

#include "core/survey/job.h"

namespace cotter {

// Puts a record into the job: in place of the one with its id, or as a new one.
// Its copies and moves are compiled in put.cpp: those of a record of any kind take the compiler a second in each file.
struct Put {
    Record record;
    std::optional<std::size_t> at;  // position for a new record in its list (an undo restores the order); end if none

    Put();
    // `put`: a record of one kind, or a Record.
    template <class R>
    Put(R put, std::optional<std::size_t> position)
        : Put(place_among<R>(static_cast<Record*>(nullptr)), &put, position) {}
    Put(const Put&);
    Put(Put&&) noexcept;
    Put& operator=(const Put&);
    Put& operator=(Put&&) noexcept;
    ~Put();
    bool operator==(const Put&) const;

private:
    static constexpr std::size_t kAnyKind = static_cast<std::size_t>(-1);

    // `from`: a record of the kind at that place of Record's alternatives, or a Record; moved from.
    Put(std::size_t kind, void* from, std::optional<std::size_t> position);

    template <class R, class... Kinds>
    static consteval std::size_t place_among(std::variant<Kinds...>*) {
        static_assert((std::is_same_v<R, Kinds> || ...) || std::is_same_v<R, Record>, "no kind of record");
        std::size_t place = 0;
        const bool found = ((std::is_same_v<R, Kinds> || (++place, false)) || ...);
        return found ? place : kAnyKind;
    }
};

// Takes a record out of the job. Other records must not refer to it any more.
struct Remove {
    RecordKind kind = RecordKind::tag;
    Uuid id;

    bool operator==(const Remove&) const = default;
};

using Change = std::variant<Put, Remove>;

struct Edit {
    JobId job;
    Instant at;
    std::string by;
    std::string reason;           // needed after sign-off, when the edit becomes an amendment
    std::vector<Change> changes;  // all of them or none

    bool operator==(const Edit&) const = default;
};

// The job after the edit; the given one is untouched when it fails. Fails `refused` with the first problem of
// problems_of(), when the edit is for another job or empty, or, after sign-off, when it has no reason or would
// take the sign-off away. After sign-off every change also leaves an Amendment.
[[nodiscard]] Result<Job> apply(Job job, const Edit& edit);

// The edit that takes apply(job, edit) back to `job` (amendments apart): same `job`, `at`, `by`.
// `job` is the one before the edit, and the edit must be one that apply() accepts.
[[nodiscard]] Edit inverse(const Job& job, const Edit& edit);

}  // namespace cotter
