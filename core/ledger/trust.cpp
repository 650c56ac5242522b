// allowed_signers, line by line.
#include "core/ledger/trust.h"

#include <algorithm>
#include <charconv>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/ledger/words.h"
#include "core/packet/signature.h"

namespace cotter::ledger {

namespace {

// '*' stands for any run, '?' for one character; byte by byte, as ssh does it.
bool fits(std::string_view text, std::string_view pattern) {
    std::size_t t = 0, p = 0, star = std::string_view::npos, resume = 0;
    while (t < text.size()) {
        if (p < pattern.size() && pattern[p] == '*') {
            star = p++;
            resume = t;
        } else if (p < pattern.size() && (pattern[p] == '?' || pattern[p] == text[t])) {
            ++p;
            ++t;
        } else if (star != std::string_view::npos) {
            p = star + 1;
            t = ++resume;
        } else {
            return false;
        }
    }
    while (p < pattern.size() && pattern[p] == '*') ++p;
    return p == pattern.size();
}

// A pattern list: one pattern fits and none that begins with '!'.
bool fits_list(std::string_view text, const std::vector<std::string>& patterns) {
    bool good = false;
    for (const std::string_view pattern : patterns) {
        if (pattern.starts_with('!')) {
            if (fits(text, pattern.substr(1))) return false;
        } else {
            good = good || fits(text, pattern);
        }
    }
    return good;
}

bool blank(char c) {
    return c == ' ' || c == '\t';
}

// Takes the next word off the line. A quote may stand anywhere in it, as in option="a b"; quotes are left out.
Result<std::string> take_word(std::string_view& line) {
    while (!line.empty() && blank(line.front())) line.remove_prefix(1);
    std::string out;
    bool quoted = false;
    for (; !line.empty() && (quoted || !blank(line.front())); line.remove_prefix(1)) {
        if (line.front() == '"')
            quoted = !quoted;
        else
            out += line.front();
    }
    if (quoted) return fail(Errc::refused, "a quote is not closed");
    return out;
}

// YYYYMMDD[HHMM[SS]][Z]
Result<std::int64_t> time_of(std::string_view text) {
    std::string_view digits = text.ends_with('Z') ? text.substr(0, text.size() - 1) : text;
    const bool good = (digits.size() == 8 || digits.size() == 12 || digits.size() == 14) &&
                      digits.find_first_not_of("0123456789") == std::string_view::npos;
    if (!good) return fail(Errc::refused, fmt::format("'{}' is not a time YYYYMMDD[HHMM[SS]]", one_line(text, 40)));
    const auto number = [&](std::size_t from, std::size_t count) {
        int out = 0;
        if (from < digits.size()) std::from_chars(digits.data() + from, digits.data() + from + count, out);
        return out;
    };
    const auto date =
        Date::parse(fmt::format("{}-{}-{}", digits.substr(0, 4), digits.substr(4, 2), digits.substr(6, 2)));
    if (!date) return unexpected(date.error());
    return Instant::from_wall({*date, number(8, 2), number(10, 2), number(12, 2)}, 0).unix_s;
}

Result<> take_option(const std::string& option, TrustedKey& key, bool& authority) {
    const std::string name = ascii_lower(option.substr(0, option.find('=')));
    const std::string value = option.size() > name.size() ? option.substr(name.size() + 1) : "";
    if (name == "cert-authority") {
        authority = true;
    } else if (name == "namespaces") {
        key.namespaces = split(value, ",");
    } else if (name == "valid-after") {
        COTTER_ASSIGN(key.valid_after, time_of(value));
    } else if (name == "valid-before") {
        COTTER_ASSIGN(key.valid_before, time_of(value));
    } else {
        return fail(Errc::refused, fmt::format("'{}' is no option of a signer", one_line(name, 40)));
    }
    return {};
}

// Options stand behind each other with commas between; a comma inside quotes is part of a value.
Result<> take_options(std::string_view word, TrustedKey& key, bool& authority) {
    std::string option;
    bool quoted = false;
    for (const char c : std::string(word) + ",") {
        if (c == '"') quoted = !quoted;
        if (c == ',' && !quoted) {
            option.erase(std::remove(option.begin(), option.end(), '"'), option.end());
            COTTER_TRY(take_option(option, key, authority));
            option.clear();
        } else {
            option += c;
        }
    }
    return {};
}

// The next word with its quotes kept.
std::string_view raw_word(std::string_view& line) {
    while (!line.empty() && blank(line.front())) line.remove_prefix(1);
    bool quoted = false;
    std::size_t end = 0;
    for (; end < line.size() && (quoted || !blank(line[end])); ++end)
        if (line[end] == '"') quoted = !quoted;
    const std::string_view out = line.substr(0, end);
    line.remove_prefix(end);
    return out;
}

bool is_key_type(std::string_view word) {
    return word.starts_with("ssh-") || word.starts_with("ecdsa-") || word.starts_with("sk-");
}

Result<std::optional<TrustedKey>> key_of(std::string_view line) {
    while (!line.empty() && blank(line.front())) line.remove_prefix(1);
    if (line.empty() || line.front() == '#') return std::optional<TrustedKey>();
    TrustedKey key;
    bool authority = false;
    COTTER_ASSIGN(const std::string principals, take_word(line));
    for (const std::string& pattern : split(principals, ",")) key.principals.push_back(name_key(pattern));
    std::string_view word = raw_word(line);
    if (!word.empty() && !is_key_type(word)) {
        COTTER_TRY(take_options(word, key, authority));
        word = raw_word(line);
    }
    if (!is_key_type(word)) return fail(Errc::refused, "there is no key type behind the principals and options");
    const std::string_view blob = raw_word(line);
    if (blob.empty()) return fail(Errc::refused, "there is no key");
    if (blob.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/=") != blob.npos)
        return fail(Errc::refused, "the key is not base64");
    key.key = authority ? std::string() : fmt::format("{} {}", word, blob);
    return key;
}

}  // namespace

Result<TrustList> parse_allowed_signers(std::string_view text) {
    TrustList out;
    for (int number = 1; !text.empty(); ++number) {
        const auto end = text.find('\n');
        std::string_view line = text.substr(0, end);
        if (line.ends_with('\r')) line.remove_suffix(1);
        auto key = key_of(line);
        if (!key) return unexpected(context(key.error(), fmt::format("line {}", number)));
        if (*key) {
            (*key)->line = number;
            out.keys.push_back(std::move(**key));
        }
        if (end == std::string_view::npos) break;
        text.remove_prefix(end + 1);
    }
    return out;
}

Trust TrustList::judge(std::string_view technician, std::string_view key, const Instant& at) const {
    const std::string name = name_key(technician);
    Trust best = Trust::not_listed;
    for (const TrustedKey& trusted : keys) {
        if (trusted.key != key || (!trusted.namespaces.empty() && !fits_list(kPacketNamespace, trusted.namespaces)))
            continue;
        if (!fits_list(name, trusted.principals)) {
            if (best == Trust::not_listed) best = Trust::other_name;
            continue;
        }
        const bool in_time = (!trusted.valid_after || at.unix_s >= *trusted.valid_after) &&
                             (!trusted.valid_before || at.unix_s < *trusted.valid_before);
        if (in_time) return Trust::listed;
        best = Trust::lapsed;
    }
    return best;
}

bool TrustList::names(std::string_view technician) const {
    const std::string name = name_key(technician);
    return std::any_of(keys.begin(), keys.end(), [&](const TrustedKey& k) { return fits_list(name, k.principals); });
}

}  // namespace cotter::ledger
