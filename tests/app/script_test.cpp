// The driver's scripts: how they are read, and what they say when the screen is not as they expect.
#include "app/driver/script.h"

#include <doctest/doctest.h>

#include "app/driver/drive.h"
#include "app/driver/labels.h"
#include "tests/app/screens.h"
#include "tests/support/memory_files.h"

using namespace cotter;
using Words = std::vector<std::string>;

namespace {

std::string refusal(std::string_view script) {
    const auto parsed = parse_script(script);
    REQUIRE_FALSE(parsed);
    return parsed.error().line();
}

std::string played(Shown& shown, std::string_view script) {
    const auto parsed = parse_script(script);
    REQUIRE_MESSAGE(parsed.has_value(), (parsed ? std::string() : parsed.error().line()));
    const auto outcome = shown.hands.run(*parsed);
    return outcome ? "" : outcome.error().line();
}

}  // namespace

TEST_CASE("a script is read line by line") {
    const auto parsed = parse_script(
        "# a comment\n\n tap \"New job\" 2\ntap 12.5,40\r\ndrag 1,2 3,4 250\nwait 20 ms\nwait 3 frames\n"
        "text \"say \\\"hm\\\" # no comment\"\nrotate 915x412\nshot a-1\npinch 5,6 40 80 # zoom");
    REQUIRE(parsed);
    REQUIRE(parsed->size() == 9);
    CHECK((*parsed)[0].text == "New job");
    CHECK((*parsed)[0].count == 2);
    CHECK((*parsed)[0].line == 3);
    CHECK((*parsed)[1].from == Point{12.5F, 40});
    CHECK((*parsed)[2].to == Point{3, 4});
    CHECK((*parsed)[2].count == 250);
    CHECK((*parsed)[3].verb == ScriptVerb::wait_ms);
    CHECK((*parsed)[4].verb == ScriptVerb::wait_frames);
    CHECK((*parsed)[5].text == "say \"hm\" # no comment");
    CHECK((*parsed)[6].to == Point{915, 412});
    CHECK((*parsed)[8].to == Point{40, 80});
}

TEST_CASE("coordinates beside a label are parts of its target") {
    const auto parsed = parse_script("tap \"Photo\" 0.25,1\ndrag \"Photo\" 0,0 0.5,0.75 300\ntap \"Photo\" 2");
    REQUIRE(parsed);
    CHECK((*parsed)[0].parts);
    CHECK((*parsed)[0].from == Point{0.25F, 1});
    CHECK((*parsed)[1].parts);
    CHECK((*parsed)[1].to == Point{0.5F, 0.75F});
    CHECK((*parsed)[1].count == 300);
    CHECK_FALSE((*parsed)[2].parts);
    CHECK((*parsed)[2].count == 2);
    CHECK(refusal("drag \"Photo\" 10,20 30,40").find("U1,V1") != std::string::npos);
    CHECK(refusal("tap \"Photo\" 1.5,0").find("U,V") != std::string::npos);
    Shown shown(GalleryPage::start, {412, 915}, {}, 40);
    CHECK(played(shown, "tap \"Help\" 0.9,0.1\nexpect \"How a grade\"").empty());
}

TEST_CASE("a line that is no command is named") {
    CHECK(refusal("tap \"a\"\npush \"b\"").starts_with("no command 'push': line 2; use tap"));
    CHECK(refusal("tap").starts_with(
        "'tap' is not understood: line 1; write tap \"label\" [n], tap \"label\" U,V or tap X,Y"));
    CHECK(refusal("tap \"a").starts_with("a quote is not closed: line 1"));
    CHECK(refusal("wait 5 minutes").find("write wait N ms or wait N frames") != std::string::npos);
    CHECK(refusal("shot ../a").find("letters, digits") != std::string::npos);
    CHECK(refusal("key f5").find("back, enter") != std::string::npos);
    CHECK(refusal("drag 1,2 3,4 5 6").find("line 1") != std::string::npos);
    CHECK(refusal("tap nan,1").find("line 1") != std::string::npos);
    CHECK(refusal("expect word").find("expect \"text\"") != std::string::npos);
}

TEST_CASE("a script plays, scrolling to what it needs") {
    Shown shown(GalleryPage::start, {412, 915}, {}, 40);
    CHECK(played(shown,
                 "expect \"NUR-07\"\nexpect-not \"Visit 40\"\ntap \"Visit 40\"\nkey back\ntap \"Help\"\n"
                 "expect \"How a grade\"\ntap \"Understood\"\nexpect-not \"How a grade\"")
              .empty());
    CHECK(shown.gallery->log() == std::vector<std::string>{"old-39", "back"});
}

TEST_CASE("a label that is not there is answered with those like it, and the line") {
    Shown shown(GalleryPage::start);
    CHECK(played(shown, "note \"x\"\ntap \"Axle 1 rigth\"")
              .starts_with("no target 'Axle 1 rigth' on the screen: line 2; there is 'Axle 1 right', 'Axle 1 left', "));
    CHECK(played(shown, "tap \"Help\" 2").starts_with("only 1 of 'Help' on the screen: line 1"));
    CHECK(played(shown, "expect \"Nothing like it\"")
              .starts_with("'Nothing like it' is not on the screen: line 1; there is"));
    CHECK(played(shown, "expect-not \"Jobs\"") == "'Jobs' is on the screen: line 1");
    CHECK(played(shown, "text \"a\"") == "no field takes words: line 1; tap one first");
    CHECK(played(shown, "\n\ntap \"Lights and wiring\"") == "'Lights and wiring' cannot be tapped: it is off: line 3");
}

TEST_CASE("turning brings the actions to the side") {
    Shown shown(GalleryPage::start);
    CHECK(shown.target("New job").rect.y > 800);
    CHECK(played(shown, "rotate 915x412").empty());
    CHECK(shown.target("New job").rect.x > 600);
    CHECK(shown.log().scrolls.front().rect.w < 740);
}

TEST_CASE("the likest labels come first") {
    CHECK(edit_distance("kitten", "sitting") == 3);
    CHECK(likest("cap", {"wheel on", "Cap, outer", "lap", "cap"}, 3) ==
          std::vector<std::string>{"Cap, outer", "cap", "lap"});
}

TEST_CASE("a script from a file writes its shots and names itself when it fails") {
    Shown shown(GalleryPage::start);
    MemoryFiles files;
    const auto put = [&](std::string_view text) { files.put("walk.txt", as_bytes(text)); };
    Words said;
    const auto say = [&](std::string_view line) { said.emplace_back(line); };
    put("note \"begin\"\nshot one\ntap \"Help\"\nshot two.png\n");
    const auto outcome = drive(shown.host, files, {"walk.txt", "out/shots", false}, say);
    REQUIRE(outcome);
    CHECK(outcome->shots == 2);
    CHECK(outcome->commands == 4);
    CHECK(said == Words{"begin", "shot one", "shot two.png"});
    CHECK(files.has("out/shots/one.png"));
    CHECK(files.has("out/shots/two.png"));
    put("tap \"Understood\"\ntap \"Nowhere\"\n");
    CHECK(drive(shown.host, files, {"walk.txt", "", true}, say)
              .error()
              .line()
              .starts_with("no target 'Nowhere' on the screen: walk.txt: line 2"));
    put("shot x\n");
    CHECK_FALSE(drive(shown.host, files, {"walk.txt", "", false}, say));
    CHECK_FALSE(drive(shown.host, files, {"none.txt", "", false}, say));
    put("jump\n");
    CHECK(drive(shown.host, files, {"walk.txt", "", false}, say)
              .error()
              .line()
              .starts_with("no command 'jump': walk.txt: line 1"));
}
