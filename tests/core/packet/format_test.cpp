// The example in core/packet/FORMAT.md is what the code writes, to the letter; and it is a valid packet.
#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "tests/core/packet/bag_maker.h"
#include "tests/support/project_files.h"

using namespace cotter;
using namespace cotter::test;

namespace {

std::string document() {
    std::ifstream in(project_file("core/packet/FORMAT.md"), std::ios::binary);
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
}

// The block that follows the first line with that beginning, inside its fence.
std::string block_after(const std::string& text, const std::string& beginning) {
    const auto line = text.find("\n" + beginning);
    REQUIRE_MESSAGE(line != std::string::npos, beginning);
    const auto from = text.find("\n```\n", line) + 5;
    return text.substr(from, text.find("\n```\n", from) + 1 - from);
}

std::string without_cr(std::string text) {
    std::erase(text, '\r');
    return text;
}

// "50 4b …", 16 bytes a line.
std::string hex_dump(ByteView bytes) {
    std::string out;
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        out += to_hex(bytes.subspan(i, 1));
        out += i % 16 == 15 || i + 1 == bytes.size() ? '\n' : ' ';
    }
    return out;
}

}  // namespace

TEST_CASE("format: every file of the example is written as the document shows it") {
    const std::string whole = document();
    const std::string text = whole.substr(whole.find("## An example"));
    BagTexts texts = our_packet();
    CHECK(texts["data/photos/axle1-left_cap_before_01.jpg"] == "\xff\xd8 a picture \xff\xd9");
    texts.erase("data/photos/axle1-left_cap_before_01.jpg");
    for (const auto& [path, content] : texts) CHECK(block_after(text, "`" + path + "`") == without_cr(content));
}

TEST_CASE("format: an entry of the archive is written as the document shows it") {
    const Bytes zip = our_zip();
    MemoryFiles files;
    files.put("/zip", zip);
    const auto reader = files.open("/zip").value();
    const ZipIndex index = read_zip_index(*reader, {}).value();
    const ZipEntry& picture = index.entries[1];
    const auto from = static_cast<std::size_t>(picture.header_at);
    const auto end = static_cast<std::size_t>(picture.end_at);
    CHECK(block_after(document(), "The picture's entry in the archive") ==
          hex_dump(ByteView(zip).subspan(from, end - from)));
}

TEST_CASE("format: the limits that the document names are the defaults") {
    const ZipLimits limits;
    CHECK(limits.entries == 10'000);
    CHECK(limits.file_size == std::uint64_t{4} << 30);
    CHECK(limits.total_size == std::uint64_t{16} << 30);
    CHECK(limits.ratio == 200);
    CHECK(document().find("10,000 entries, 4 GiB in one file, 16 GiB in all, or 200 : 1") != std::string::npos);
}
