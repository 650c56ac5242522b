// See sql.h: what a ledger's place is, and how it is shown. A password in it never gets into a message.
#include <algorithm>
#include <array>

#include "core/base/text.h"
#include "core/store/sql.h"

namespace cotter {

namespace {

constexpr std::string_view kScheme = "://";
constexpr auto kNone = std::string_view::npos;

int hex_digit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    const char low = static_cast<char>(c | 0x20);
    return low >= 'a' && low <= 'f' ? low - 'a' + 10 : -1;
}

// RFC 3986: "p%61ss" as "pass".
std::string decoded(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool code =
            text[i] == '%' && i + 2 < text.size() && hex_digit(text[i + 1]) >= 0 && hex_digit(text[i + 2]) >= 0;
        out += code ? static_cast<char>(hex_digit(text[i + 1]) * 16 + hex_digit(text[i + 2])) : text[i];
        i += code ? 2 : 0;
    }
    return out;
}

bool is_secret(std::string_view parameter) {
    const std::string key = ascii_lower(decoded(parameter.substr(0, parameter.find('='))));
    return key == "password" || key == "sslpassword";
}

// Where the user's part ends: at the last @, which is more than libpq takes for it and so never too little.
std::string without_password(std::string_view address, std::size_t begin) {
    const auto at = address.rfind('@');
    if (at == kNone || at < begin) return std::string(address);
    const std::string_view user = address.substr(begin, at - begin);
    const auto colon = std::min({user.find(':'), user.find("%3A"), user.find("%3a"), user.size()});
    return std::string(address.substr(0, begin + colon)) + std::string(address.substr(at));
}

std::string without_secret_parameters(std::string_view address) {
    const auto query = address.find('?');
    if (query == kNone) return std::string(address);
    std::string out(address.substr(0, query));
    char before = '?';
    for (const std::string& parameter : split(address.substr(query + 1), "&")) {
        if (is_secret(parameter)) continue;
        out += before + parameter;
        before = '&';
    }
    return out;
}

// libpq's other form, which our places do not have: one of its words with a = behind.
bool is_conninfo(std::string_view where) {
    constexpr std::array kWords{"host", "hostaddr", "port", "dbname", "user", "password", "service", "sslmode"};
    for (const std::string_view word : kWords)
        for (auto at = where.find(word); at != kNone; at = where.find(word, at + 1)) {
            const auto next = where.find_first_not_of(' ', at + word.size());
            if ((at == 0 || where[at - 1] == ' ') && next != kNone && where[next] == '=') return true;
        }
    return false;
}

}  // namespace

bool is_server(std::string_view where) {
    return where.starts_with("postgresql://") || where.starts_with("postgres://");
}

Result<> check_place(std::string_view where) {
    constexpr const char* kHow = "name a file, or a server as postgresql://USER@HOST:PORT/DATABASE";
    const auto scheme = where.find(kScheme);
    if (!is_server(where) && (scheme != kNone || is_conninfo(where)))
        return fail(Errc::refused, "this is no place of a ledger", shown_place(where), kHow);
    if (!is_server(where)) return {};
    const std::string_view rest = where.substr(scheme + kScheme.size());
    const auto slash = rest.find('/'), at = rest.find('@');
    const auto user = at != kNone && (slash == kNone || at < slash) ? at + 1 : 0;  // libpq looks no further for it
    const std::string_view host = rest.substr(user, rest.find('?', user) - user);
    if (host.find('@') != kNone)
        return fail(Errc::refused, "the ledger's address cannot be read", shown_place(where),
                    "write @ in a name or password as %40, and / as %2F");
    return {};
}

std::string shown_place(std::string_view where) {
    const auto scheme = where.find(kScheme);
    if (scheme != kNone) return without_secret_parameters(without_password(where, scheme + kScheme.size()));
    const auto secret = ascii_lower(where).find("password");
    const auto equals = secret == kNone ? kNone : where.find('=', secret);
    return std::string(equals == kNone ? where : where.substr(0, secret));
}

}  // namespace cotter
