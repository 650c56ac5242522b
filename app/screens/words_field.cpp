// See words_field.h.
#include "app/screens/words_field.h"

namespace cotter {

void words_field(UiContext& ui, const Name& name, FieldSpec spec, const Drafts& drafts,
                 const std::function<void(const std::string&)>& hand_in, Commands& out) {
    const WordsDraft* words = drafts.words();
    const bool drafted = words != nullptr && words->field == name.key;
    if (drafted) spec.value = words->text;
    const FieldAnswer answer = text_field(ui, name, spec);
    if (answer.text) {
        Drafts changed = drafts;
        changed.put_words(std::string(name.key), *answer.text);
        out.push_back(KeepDrafts{std::move(changed)});
    }
    // Left over from an app that was killed while they were typed: they are handed in as they stand.
    const bool left_over = drafted && !answer.text && ui.state.edited == 0 && ui.state.edited_before == 0;
    if (!answer.done && !left_over) return;
    if (answer.text || drafted) hand_in(answer.text ? *answer.text : words->text);
    // What was handed in may be a draft itself.
    const auto* kept = out.empty() ? nullptr : std::get_if<KeepDrafts>(&out.back());
    Drafts cleared = kept == nullptr ? drafts : kept->drafts;
    cleared.drop_words();
    out.push_back(KeepDrafts{std::move(cleared)});
}

}  // namespace cotter
