// UTF-8 in, lines out.
#include "core/report/print_text.h"

#include <algorithm>

#include "core/base/text.h"

namespace cotter {

namespace {

constexpr char32_t kReplacement = 0xFFFD;

// Takes one sign off the front; U+FFFD and one byte for what is not UTF-8.
char32_t take_sign(std::string_view& text) {
    const auto first = static_cast<unsigned char>(text[0]);
    const std::size_t length = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
    const std::string_view bytes = text.substr(0, length);
    if (bytes.size() < length || !is_utf8(bytes)) {
        text.remove_prefix(1);
        return kReplacement;
    }
    text.remove_prefix(length);
    char32_t sign = length == 1 ? first : first & (0xFFu >> (length + 1));
    for (const char c : bytes.substr(1)) sign = (sign << 6) | (static_cast<unsigned char>(c) & 0x3F);
    return sign;
}

void append_utf8(std::string& out, char32_t sign) {
    const auto tail = [&](int shift) { out += static_cast<char>(0x80 | ((sign >> shift) & 0x3F)); };
    if (sign < 0x80) {
        out += static_cast<char>(sign);
    } else if (sign < 0x800) {
        out += static_cast<char>(0xC0 | (sign >> 6));
        tail(0);
    } else {
        out += static_cast<char>(0xE0 | (sign >> 12));
        tail(6);
        tail(0);
    }
}

bool has_no_shape(char32_t sign) {
    return (sign >= 0x200B && sign <= 0x200F) || (sign >= 0x202A && sign <= 0x202E) ||
           (sign >= 0x2060 && sign <= 0x206F) || (sign >= 0xFE00 && sign <= 0xFE0F) || sign == 0xFEFF || sign == 0xAD;
}

bool is_right_to_left(char32_t sign) {
    return (sign >= 0x590 && sign <= 0x8FF) || (sign >= 0xFB1D && sign <= 0xFDFF) || (sign >= 0xFE70 && sign <= 0xFEFE);
}

bool is_digit(char32_t sign) {
    return (sign >= '0' && sign <= '9') || (sign >= 0x660 && sign <= 0x669) || (sign >= 0x6F0 && sign <= 0x6F9);
}

bool is_left_to_right(char32_t sign) {
    return !is_right_to_left(sign) && !is_digit(sign) &&
           ((sign >= 'A' && sign <= 'Z') || (sign >= 'a' && sign <= 'z') || sign >= 0xC0);
}

char32_t mirrored(char32_t sign) {
    static constexpr std::u32string_view pairs = U"()[]{}<>«»";
    const auto at = pairs.find(sign);
    return at == std::u32string_view::npos ? sign : pairs[at ^ 1];
}

// Turns each run of right-to-left letters round, with what stands between them; numbers in it stay as they are.
void to_drawing_order(std::u32string& line) {
    for (auto from = std::find_if(line.begin(), line.end(), is_right_to_left); from != line.end();) {
        const auto stop = std::find_if(from, line.end(), is_left_to_right);
        auto to = stop;
        while (!is_right_to_left(*(to - 1))) --to;
        if (to != stop && *to == ')' && std::count(from, to, U'(') > std::count(from, to, U')')) ++to;
        std::reverse(from, to);
        std::transform(from, to, from, mirrored);
        for (auto digit = std::find_if(from, to, is_digit); digit != to; digit = std::find_if(digit, to, is_digit)) {
            const auto end =
                std::find_if_not(digit, to, [](char32_t c) { return is_digit(c) || c == '.' || c == ','; });
            std::reverse(digit, end);
            digit = end;
        }
        from = std::find_if(to, line.end(), is_right_to_left);
    }
}

std::string drawn(std::u32string_view line) {
    std::u32string signs(line);
    while (!signs.empty() && signs.back() == ' ') signs.pop_back();
    to_drawing_order(signs);
    std::string out;
    for (const char32_t sign : signs) append_utf8(out, sign);
    return out;
}

}  // namespace

Printable printable(std::string_view utf8, const Canvas& canvas) {
    Printable out;
    const char32_t stand_in = canvas.has_sign(kReplacement) ? kReplacement : U'?';
    while (!utf8.empty()) {
        char32_t sign = take_sign(utf8);
        if (sign == '\r' && utf8.starts_with('\n')) continue;
        if (sign == '\r' || sign == 0x85 || sign == 0x2028 || sign == 0x2029) sign = '\n';
        if (sign == '\t') sign = ' ';
        if (has_no_shape(sign)) continue;
        const bool control = sign != '\n' && (sign < 0x20 || (sign >= 0x7F && sign < 0xA0));
        if (control || (sign != '\n' && !canvas.has_sign(sign))) sign = kReplacement;
        if (sign == kReplacement) {
            out.replaced = true;
            sign = stand_in;
        }
        out.signs += sign;
    }
    return out;
}

std::vector<std::string> wrap(std::u32string_view signs, const Canvas& canvas, Face face, double size, double width) {
    std::vector<std::string> lines;
    std::size_t start = 0, after_space = 0;  // after_space: where the line could be broken, if behind start
    double used = 0, used_to_space = 0;
    const auto end_line = [&](std::size_t end) { lines.push_back(drawn(signs.substr(start, end - start))); };
    for (std::size_t i = 0; i < signs.size(); ++i) {
        if (signs[i] == '\n') {
            end_line(i);
            start = i + 1;
            used = 0;
            continue;
        }
        const double advance = canvas.advance(face, signs[i]) * size;
        if (signs[i] != ' ' && used + advance > width && i > start) {
            const bool at_space = after_space > start;
            end_line(at_space ? after_space : i);
            start = at_space ? after_space : i;
            used = at_space ? used - used_to_space : 0;
        }
        used += advance;
        if (signs[i] == ' ') {
            after_space = i + 1;
            used_to_space = used;
        }
    }
    end_line(signs.size());
    return lines;
}

double longest_word(std::u32string_view signs, const Canvas& canvas, Face face, double size) {
    double longest = 0, word = 0;
    for (const char32_t sign : signs) {
        word = sign == ' ' || sign == '\n' ? 0 : word + canvas.advance(face, sign) * size;
        longest = std::max(longest, word);
    }
    return longest;
}

double text_width(std::string_view utf8, const Canvas& canvas, Face face, double size) {
    double width = 0;
    while (!utf8.empty()) width += canvas.advance(face, take_sign(utf8)) * size;
    return width;
}

}  // namespace cotter
