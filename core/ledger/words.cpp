// Fields and words.
#include "core/ledger/words.h"

#include <algorithm>
#include <set>

#include "core/base/text.h"
#include "core/packet/unicode.h"

namespace cotter::ledger {

namespace {

constexpr std::size_t kLongestWord = 40;
constexpr std::size_t kMostTyped = 8;
constexpr std::size_t kShown = 120;

bool in_word(char c) {
    return static_cast<unsigned char>(c) >= 0x80 || (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z');
}

// A run of word characters in folded text: [begin, end).
struct Run {
    std::size_t begin, end;
};
std::vector<Run> runs_of(std::string_view folded) {
    std::vector<Run> out;
    for (std::size_t i = 0; i < folded.size();) {
        std::size_t end = i;
        while (end < folded.size() && in_word(folded[end])) ++end;
        if (end > i) out.push_back({i, end});
        i = std::max(end, i + 1);
    }
    return out;
}

std::string cut(std::string_view word) {
    std::size_t size = std::min(word.size(), kLongestWord);
    while (size > 0 && size < word.size() && (static_cast<unsigned char>(word[size]) & 0xC0) == 0x80) --size;
    return std::string(word.substr(0, size));
}

// A word glued from parts that only a hyphen, a dot or a slash held apart.
bool glue(char c) {
    return c == '-' || c == '.' || c == '/' || c == '_';
}

void add_words(std::set<std::string>& out, const Field& field) {
    const std::string folded = folded_text(field.text);
    std::string glued;
    std::size_t parts = 0, last_end = 0;
    const auto close = [&] {
        if (parts > 1) out.insert(cut(glued));
        glued.clear();
        parts = 0;
    };
    for (const Run& run : runs_of(folded)) {
        if (parts > 0 && !(run.begin == last_end + 1 && glue(folded[last_end]))) close();
        const std::string word = folded.substr(run.begin, run.end - run.begin);
        out.insert(cut(word));
        glued += word;
        ++parts;
        last_end = run.end;
    }
    close();
    if (field.name != "VIN") return;
    const std::string vin = number_key(field.text);
    for (const std::size_t tail : {8u, 6u, 4u})
        if (vin.size() > tail) out.insert(vin.substr(vin.size() - tail));
}

class Collector {
public:
    void add(std::string_view name, std::string_view text) {
        std::string flat;
        for (const char c : text) flat += static_cast<unsigned char>(c) < 0x20 || c == 0x7F ? ' ' : c;
        if (flat.find_first_not_of(' ') == std::string::npos) return;
        if (seen_.insert(flat).second) out.push_back({std::string(name), std::move(flat)});
    }
    std::vector<Field> out;

private:
    std::set<std::string> seen_;
};

void add_trailer(Collector& all, const Job& job) {
    const Trailer* trailer = job.only<Trailer>();
    if (trailer == nullptr) return;
    all.add("unit", trailer->unit);
    all.add("plate", trailer->plate);
    all.add("VIN", trailer->vin);
    all.add("trailer", trailer->kind + (trailer->kind.empty() || trailer->maker.empty() ? "" : ", ") + trailer->maker);
    for (const Axle& axle : trailer->axles) all.add("axle", axle.model);
}

void add_notes(Collector& all, const Job& job) {
    for (const Shot& r : job.all<Shot>()) all.add("note", r.note);
    for (const Reading& r : job.all<Reading>()) all.add("note", r.note);
    for (const Torque& r : job.all<Torque>()) all.add("note", r.found_note);
    for (const Level& r : job.all<Level>()) all.add("note", r.product);
    for (const StepMark& r : job.all<StepMark>()) all.add("note", r.note);
    for (const BearingSetting& r : job.all<BearingSetting>()) all.add("note", r.note);
    for (const Quote& r : job.all<Quote>()) all.add("note", r.note);
    for (const InspectionAnswer& r : job.all<InspectionAnswer>()) all.add("note", r.remark);
}

std::string joined(std::initializer_list<std::string_view> parts) {
    std::string out;
    for (const std::string_view part : parts) {
        if (part.empty()) continue;
        if (!out.empty()) out += ", ";
        out += part;
    }
    return out;
}

}  // namespace

std::vector<Field> searched_fields(const Job& job) {
    Collector all;
    add_trailer(all, job);
    if (const Visit* visit = job.only<Visit>()) {
        all.add("customer", visit->customer);
        all.add("place", visit->place);
        all.add("technician", joined({visit->technician, visit->company}));
        all.add("complaint", visit->complaint);
    }
    for (const Finding& f : job.all<Finding>()) all.add("finding", joined({f.component, f.defect, f.todo}));
    for (const Need& n : job.all<Need>()) all.add("part", n.item);
    for (const Offer& o : job.all<Offer>()) all.add("part", joined({o.title, o.part_number, o.supplier}));
    for (const Finding& f : job.all<Finding>()) all.add("note", joined({f.note, f.outcome_note}));
    add_notes(all, job);
    return all.out;
}

std::string index_words(const std::vector<Field>& fields) {
    std::set<std::string> words;
    for (const Field& field : fields) add_words(words, field);
    std::string out;
    for (const std::string& word : words) out += (out.empty() ? "" : " ") + word;
    return out;
}

std::vector<std::string> typed_words(std::string_view text) {
    const std::string folded = folded_text(text);
    std::vector<std::string> out;
    for (const Run& run : runs_of(folded)) {
        const std::string word = cut(std::string_view(folded).substr(run.begin, run.end - run.begin));
        if (out.size() < kMostTyped && std::find(out.begin(), out.end(), word) == out.end()) out.push_back(word);
    }
    return out;
}

Field where_found(const std::vector<Field>& fields, std::string_view word) {
    for (const Field& field : fields) {
        std::set<std::string> words;
        add_words(words, field);
        const auto it = words.lower_bound(std::string(word));
        if (it == words.end() || !it->starts_with(word)) continue;
        if (field.text.size() <= kShown) return field;
        const auto at = folded_text(field.text).find(word);  // near enough: folding seldom moves anything
        std::size_t begin = at == std::string::npos || at < kShown / 2 ? 0 : at - kShown / 2;
        begin = std::min(begin, field.text.size() - 1);
        while (begin > 0 && (static_cast<unsigned char>(field.text[begin]) & 0xC0) == 0x80) --begin;
        return {field.name, (begin > 0 ? "…" : "") + one_line(std::string_view(field.text).substr(begin), kShown)};
    }
    return {};
}

std::string fields_text(const std::vector<Field>& fields) {
    std::string out;
    for (const Field& field : fields) out += field.name + "\t" + field.text + "\n";
    return out;
}

std::vector<Field> fields_from_text(std::string_view text) {
    std::vector<Field> out;
    while (!text.empty()) {
        const auto end = text.find('\n'), tab = text.find('\t');
        if (end == std::string_view::npos || tab > end) return out;
        out.push_back({std::string(text.substr(0, tab)), std::string(text.substr(tab + 1, end - tab - 1))});
        text.remove_prefix(end + 1);
    }
    return out;
}

std::string name_key(std::string_view text) {
    std::string out;
    for (const char c : folded_text(text)) {
        const bool blank = static_cast<unsigned char>(c) <= 0x20;
        if (!blank) out += c;
        if (blank && !out.empty() && out.back() != ' ') out += ' ';
    }
    if (out.ends_with(' ')) out.pop_back();
    return out;
}

std::string number_key(std::string_view text) {
    std::string out;
    for (const char c : folded_text(text))
        if (in_word(c)) out += c;
    return out;
}

}  // namespace cotter::ledger
