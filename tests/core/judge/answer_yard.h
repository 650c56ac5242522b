// A trailer on which every point is answered well, by records alone, and the ways to change one thing about it. For
// tests of the answer engine. Everything goes in as edits, through apply().
#pragma once

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "core/judge/answer.h"
#include "core/trade/reading_names.h"
#include "tests/core/judge/judge_bench.h"

namespace cotter::test {

inline constexpr const char* kPound = "[lb_av]";
inline constexpr const char* kInch = "[in_i]";
inline constexpr const char* kPsi = "[psi]";
inline constexpr const char* kTechnician = "A. Tester";

[[nodiscard]] Axle an_axle(BrakeKind brake, Wheels wheels = Wheels::single);

// One visit.
class AnswerYard {
public:
    // `day`: "2026-11-29"; the visit opens at 07:00, six hours behind UTC. `number` keeps ids of several visits apart.
    explicit AnswerYard(std::vector<Axle> axles, Actuation actuation, const char* day = "2026-11-29", int number = 1);

    [[nodiscard]] const Job& job() const { return job_; }
    [[nodiscard]] const Trailer& trailer() const { return job_.all<Trailer>().front(); }
    [[nodiscard]] const Visit& visit() const { return job_.all<Visit>().front(); }

    void put(Record record);  // fails the test when it is refused
    bool remove(const Uuid& id);
    void change_trailer(const std::function<void(Trailer&)>& change);
    void change_visit(const std::function<void(Visit&)>& change);

    // What all_good() is not to answer: a point, everywhere or at one place.
    void leave_out(PointId point) { left_out_.push_back({point, {}}); }
    void leave_out(PointId point, const char* place) { left_out_.push_back({point, place}); }
    void all_good();
    void owners_look();  // every point that can be seen from outside, and no other

    Reading read(const char* place, std::string_view what, const char* unit, Points points,
                 Stage stage = Stage::before);
    Look look(PointId point, const char* place, LookResult result = LookResult::good, std::vector<LookItem> items = {},
              Stage stage = Stage::before, Reach reach = Reach::wheel_off);
    Look seen(PointId point, const char* place, const char* entry, Stage stage = Stage::before);  // that is wrong
    Finding find(const char* place, const char* component, const char* defect, Grade grade,
                 Outcome outcome = Outcome::open);
    void maker(std::string_view what, Bound bound, const char* value, const char* unit,
               FigureOrigin origin = FigureOrigin::document);
    void level(const char* place, const char* fluid, LevelMark before, std::optional<LevelMark> after = {});
    void torque(const char* place, const char* joint = "wheel nuts");
    void back_on(const char* place);  // a wheel that was off again: seat, torque, nuts
    Torque torque_record(const char* place, const char* joint = "wheel nuts");
    BreakawayTest test_record() const;  // every wheel held for 15 minutes, pin in again, all free
    Sidewall sidewall_record(const char* place) const;
    Chamber chamber_record(const char* place) const;
    void event(EventKind kind, const char* place = "trailer");
    void weigh(std::initializer_list<const char*> axles_lb, const char* tongue_lb);
    void done(const char* procedure, const char* step, const char* place);
    void at(const char* clock);  // "09:30": records made from now on

    [[nodiscard]] Instant now() const { return now_; }
    [[nodiscard]] Uuid id();

private:
    Job job_;
    Instant now_;
    int base_;
    int next_ = 10;
    std::vector<std::pair<PointId, std::string>> left_out_;

    [[nodiscard]] bool wanted(const TradePoint& point, const Place& place) const;
    void answer(const TradePoint& point, const Place& place);
    void good_readings(const TradePoint& point, const Place& place);
    void good_look(const TradePoint& point, const Place& place);
    void tick() { ++now_.unix_s; }
};

// Single axles unless said: two axles of hydraulic discs behind a surge unit, electric drums, hydraulic drums, air.
[[nodiscard]] AnswerYard disc_yard(const char* day = "2026-11-29", int number = 1);
[[nodiscard]] AnswerYard electric_yard(const char* day = "2026-11-29", int number = 1);
[[nodiscard]] AnswerYard drum_yard(const char* day = "2026-11-29", int number = 1);
[[nodiscard]] AnswerYard air_yard(const char* day = "2026-11-29", int number = 1);
[[nodiscard]] AnswerYard overrun_yard();
[[nodiscard]] AnswerYard plain_yard(const char* gvwr);  // one axle, no brakes, private, nothing but the plate

// The answer at noon of the visit's day, or at another time ("2026-11-30T08:00:00-06:00").
[[nodiscard]] TowAnswer ask(const AnswerYard& yard, State state = State::now);
[[nodiscard]] TowAnswer ask_at(const AnswerYard& yard, const char* when, std::span<const EarlierVisit> earlier = {});
[[nodiscard]] TowAnswer ask_with(const AnswerYard& yard, std::span<const EarlierVisit> earlier);

[[nodiscard]] const PointAnswer& at(const TowAnswer& answer, PointId point, const char* place);
// Everything that keeps the answer from 'nothing found against it', for the message of a failed test.
[[nodiscard]] std::string why(const TowAnswer& answer);

// With the reasons when it fails.
void check_outcome(const TowAnswer& answer, TowOutcome expected, const char* file, int line);
#define CHECK_OUTCOME(answer, expected) check_outcome(answer, expected, __FILE__, __LINE__)

}  // namespace cotter::test
