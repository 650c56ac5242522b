// Words that are searched, and the trust list's lines.
#include <doctest/doctest.h>

#include "core/ledger/trust.h"
#include "core/ledger/words.h"
#include "core/packet/unicode.h"

using namespace cotter;
using namespace cotter::ledger;

TEST_CASE("words: texts are folded so that typing finds them") {
    CHECK(folded_text("Grün GRÜN Ærø Łódź İstanbul ﬁn") == "grun grun aero lodz istanbul fin");
    CHECK(folded_text("NUR-07") == "nur-07");
    CHECK(folded_text("e\u0301") == "e");
    CHECK(folded_text("a\xff") == "a ");
    CHECK(index_words({{"unit", "NUR-07"}}) == "07 nur nur07");
    CHECK(index_words({{"note", "pads: 3.2 mm, 3.2 mm"}}) == "2 3 32 mm pads");
    CHECK(index_words({{"VIN", "1X9DEM0F0MADM0014"}}) == "0014 1x9dem0f0madm0014 dm0014 madm0014");
    CHECK(typed_words("  NUR-07, grün ") == std::vector<std::string>{"nur", "07", "grun"});
    CHECK(typed_words("a b c d e f g h i j").size() == 8);
    CHECK(typed_words(std::string(300, 'x'))[0].size() == 40);
    CHECK(number_key("T 000 003") == "t000003");
    CHECK(name_key("  M.   Grün\t") == "m. grun");
}

TEST_CASE("words: a hit says where it is") {
    const std::vector<Field> fields{{"unit", "NUR-07"},
                                    {"note", std::string(200, 'a') + " Brücke " + std::string(200, 'b')}};
    CHECK(where_found(fields, "nur0").name == "unit");
    CHECK(where_found(fields, "bruck").text.find("Brücke") != std::string::npos);
    CHECK(where_found(fields, "bruck").text.size() < 140);
    CHECK(where_found(fields, "zebra").name.empty());
    CHECK(fields_from_text(fields_text(fields)) == fields);
}

TEST_CASE("trust: lines of an allowed_signers file, as ssh-keygen(1) has them") {
    const Instant at = *Instant::parse("2026-05-14T12:00:00+00:00");
    const auto list = parse_allowed_signers(
        "# a comment\n\n"
        "\"R. Alder\",second@yard namespaces=\"cotter-packet,file\" ssh-ed25519 AAAA1 comment here\n"
        "M.* valid-after=\"20260101\",valid-before=\"20260601Z\" ssh-ed25519 AAAA2\n"
        "*,!\"M. Gruen\" ssh-ed25519 AAAA3\n"
        "gone valid-before=\"202601011200\" ssh-ed25519 AAAA4\n"
        "mail namespaces=\"file\" ssh-ed25519 AAAA5\n"
        "ca cert-authority ssh-ed25519 AAAA6\r\n");
    REQUIRE_MESSAGE(list, (list ? "" : list.error().line()));
    CHECK(list->judge("r. alder", "ssh-ed25519 AAAA1", at) == Trust::listed);
    CHECK(list->judge("second@yard", "ssh-ed25519 AAAA1", at) == Trust::listed);
    CHECK(list->judge("R. Alder", "ssh-ed25519 AAAA2", at) == Trust::other_name);
    CHECK(list->judge("M. Grün", "ssh-ed25519 AAAA2", at) == Trust::listed);
    CHECK(list->judge("M.Any", "ssh-ed25519 AAAA2", at) == Trust::listed);
    CHECK(list->judge("M.Any", "ssh-ed25519 AAAA2", *Instant::parse("2026-06-01T00:00:00+00:00")) == Trust::lapsed);
    CHECK(list->judge("anybody", "ssh-ed25519 AAAA3", at) == Trust::listed);
    CHECK(list->judge("M. Gruen", "ssh-ed25519 AAAA3", at) == Trust::other_name);
    CHECK(list->judge("gone", "ssh-ed25519 AAAA4", at) == Trust::lapsed);
    CHECK(list->judge("mail", "ssh-ed25519 AAAA5", at) == Trust::not_listed);
    CHECK(list->judge("ca", "ssh-ed25519 AAAA6", at) == Trust::not_listed);
    CHECK(list->judge("R. Alder", "ssh-ed25519 ZZZZ", at) == Trust::not_listed);
}

TEST_CASE("trust: a line that cannot be read is named") {
    const auto wrong = [](std::string_view text) {
        const auto list = parse_allowed_signers(text);
        return list ? std::string() : list.error().line();
    };
    CHECK(wrong("a ssh-ed25519 AAAA\nb ssh-ed25519\n") == "there is no key: line 2");
    CHECK(wrong("a whatever=\"1\" ssh-ed25519 AAAA").find("'whatever' is no option") != std::string::npos);
    CHECK(wrong("\"a ssh-ed25519 AAAA").find("a quote is not closed") != std::string::npos);
    CHECK(wrong("a valid-after=\"2026\" ssh-ed25519 AAAA").find("is not a time") != std::string::npos);
    CHECK(wrong("a ssh-ed25519 ****").find("not base64") != std::string::npos);
    CHECK(wrong("alone").find("no key type") != std::string::npos);
}
