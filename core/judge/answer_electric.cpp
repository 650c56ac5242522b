// Electric drums: the current of each magnet, its resistance. A total proves no single wheel and is not looked at.
#include <algorithm>

#include "core/judge/answer_rules.h"
#include "core/judge/gross_bands.h"

namespace cotter::answering {

namespace {

AnswerSource source_for(Grade grade) {
    return grade >= Grade::repair ? own_band() : practice("a magnet draws 2.5 to 4.1 A at 12 V");
}

// A maker's figure replaces what the bands say below their gravest step.
template <class Band>
void judge(const Scene& scene, const Ask& ask, std::string_view name, Band band, FactId good, FactId off, FactId dead,
           Replies& out) {
    for (const Sitting& s : scene.sittings) {
        tell_not_taken(s, name, ask.place, out);
        Measures list = measures(s, name, ask.place);
        if (list.empty()) continue;
        Reply r = reply_of(s, list);
        if (!take_faults(list, r))
            for (const Measure* m : list) {
                const Grade grade = band(m->si);
                const bool makers = !makers_figures(scene, s, name, ask.place).empty();
                if (grade == Grade::do_not_tow)
                    r.verdicts.push_back(told(grade, fact(dead, m->amount()), own_band()));
                else if (makers)
                    hold_against(scene, s, {name, ask.place, m->si, m->step_si, m->amount()}, r.verdicts);
                else
                    r.verdicts.push_back(
                        told(grade, fact(grade == Grade::serviceable ? good : off, m->amount()), source_for(grade)));
            }
        out.push_back(std::move(r));
    }
}

}  // namespace

void elec_amps(const Scene& scene, const Ask& ask, Replies& out) {
    judge(scene, ask, what::magnet_current, bands::magnet_current, FactId::magnet_good, FactId::magnet_off,
          FactId::magnet_dead, out);
}

void elec_mag(const Scene& scene, const Ask& ask, Replies& out) {
    judge(scene, ask, what::magnet_resistance, bands::magnet_resistance, FactId::magnet_ohm_good,
          FactId::magnet_ohm_off, FactId::magnet_open, out);
}

}  // namespace cotter::answering
