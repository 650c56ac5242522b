// What has been begun and not yet handed in: kept on disk at each change, so that a killed app comes back to it.
// Plain values. At most one of each kind in a job but for the timers; a draft belongs to the job and the route it was
// begun on.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/nav.h"
#include "core/survey/judge_records.h"
#include "core/survey/quote_records.h"

namespace cotter {

// A reading half keyed in.
struct ReadingDraft {
    std::string id;  // of the reading being changed; empty: a new one
    Place place;
    std::string what;
    Stage stage = Stage::before;
    std::string unit;
    std::vector<std::string> texts;  // as keyed, a point each
    std::string reason;
    Taken taken = Taken::measured;

    bool operator==(const ReadingDraft&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.may("id", s.id);
        f.must("place", s.place);
        f.must("what", s.what);
        f.may("stage", s.stage);
        f.may("unit", s.unit);
        f.may("texts", s.texts);
        f.may("reason", s.reason);
        f.may("taken", s.taken);
    }
};

// A finding being put together, with the mark already drawn for it.
struct FindingDraft {
    std::string id;    // of the finding being changed; empty: a new one
    std::string shot;  // the mark's; empty: no mark
    Place place;
    TagShape shape = TagShape::point;
    std::vector<TagPoint> points;
    std::string component;
    std::string defect;
    std::optional<Grade> grade;
    std::string note;
    std::string todo;

    bool operator==(const FindingDraft&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.may("id", s.id);
        f.may("shot", s.shot);
        f.must("place", s.place);
        f.may("shape", s.shape);
        f.may("points", s.points);
        f.may("component", s.component);
        f.may("defect", s.defect);
        f.may("grade", s.grade);
        f.may("note", s.note);
        f.may("todo", s.todo);
    }
};

// A wait that goes on while the phone is locked: the hub was spun, the oil settles.
struct TimerDraft {
    std::string record;  // what waits, one name for one place of one job
    Instant started;
    std::int64_t seconds = 0;

    bool operator==(const TimerDraft&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("record", s.record);
        f.must("started", s.started);
        f.must("seconds", s.seconds);
    }
};

// Words being typed into a field, until it is left. Fields of several pages are called alike, so the page counts too.
struct WordsDraft {
    Route page;
    std::string field;
    std::string text;

    bool operator==(const WordsDraft&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.may("page", s.page);
        f.must("field", s.field);
        f.must("text", s.text);
    }
};

// An answer to a quote being taken down: what was said so far, and the strokes already drawn.
struct AnswerDraft {
    std::string quote;
    std::vector<int> accepted;  // numbers of lines
    std::vector<int> declined;
    std::string name;
    Channel channel = Channel::in_person;
    std::vector<PenStroke> signature;

    bool operator==(const AnswerDraft&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("quote", s.quote);
        f.may("accepted", s.accepted);
        f.may("declined", s.declined);
        f.may("name", s.name);
        f.may("channel", s.channel);
        f.may("signature", s.signature);
    }
};

// All that was begun in one job. It carries the job's id itself, so that what a page hands back can only come to lie
// with the job that the page was drawn for.
struct Drafts {
    std::string job;  // whose they are; empty: of no job, as what is typed into the settings
    Route page;       // the shown one; not kept
    std::optional<ReadingDraft> reading;
    std::optional<FindingDraft> finding;
    std::vector<TimerDraft> timers;     // as many as wait, each for a record of its own
    std::vector<WordsDraft> all_words;  // at most one a page
    std::optional<AnswerDraft> answer;
    std::optional<Offer> offer;              // being entered for the shelf
    std::optional<MakerLimit> figure;        // a maker's figure; its number is 0 until it was keyed in
    std::string vin;                         // as typed, while it does not check
    std::optional<WordsDraft> words_before;  // as programs before kept them; read, never written

    // Those of the shown page; nullptr: none.
    [[nodiscard]] const WordsDraft* words() const {
        for (const WordsDraft& w : all_words)
            if (w.page == page) return &w;
        return nullptr;
    }
    void put_words(std::string field, std::string text) {
        drop_words();
        all_words.push_back({page, std::move(field), std::move(text)});
    }
    void drop_words() {
        std::erase_if(all_words, [&](const WordsDraft& w) { return w.page == page; });
    }

    [[nodiscard]] const TimerDraft* timer_for(std::string_view record) const {
        for (const TimerDraft& t : timers)
            if (t.record == record) return &t;
        return nullptr;
    }
    // In place of the one for the same record.
    void put_timer(TimerDraft timer) {
        drop_timer(timer.record);
        timers.push_back(std::move(timer));
    }
    void drop_timer(std::string_view record) {
        std::erase_if(timers, [&](const TimerDraft& t) { return t.record == record; });
    }

    bool operator==(const Drafts&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.may("job", s.job);
        f.may("reading", s.reading);
        f.may("finding", s.finding);
        std::optional<TimerDraft> only_one;  // as earlier versions kept it; it was over before this one was installed
        f.may("timer", only_one);
        f.may("timers", s.timers);
        f.may("all_words", s.all_words);
        f.may("words", s.words_before);
        f.may("figure", s.figure);
        f.may("answer", s.answer);
        f.may("offer", s.offer);
        f.may("vin", s.vin);
    }
};

}  // namespace cotter
