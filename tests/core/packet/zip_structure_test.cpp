// Zips that nobody vouches for: each kind of lie has its own line, and none is unpacked.
#include <doctest/doctest.h>

#include "tests/core/packet/bag_maker.h"
#include "tests/support/raw_zip.h"

using namespace cotter;
using namespace cotter::test;

namespace {

std::string refusal(const RawZip& zip, const ZipLimits& limits = {}) {
    const CheckReport report = check_bytes(zip.bytes(), limits);
    CHECK(report.verdict == Verdict::invalid);
    CHECK(report.bag_version.empty());  // nothing in it was read
    return first_error(report);
}

// "bag/a" holding "alpha", then changed.
template <class Change>
std::string refusal_of(Change change) {
    RawZip zip;
    change(zip.add("bag/a", "alpha"));
    zip.add("bag/b", "beta");
    return refusal(zip);
}

void both(RawEntry& entry, void (*change)(RawHeader&)) {
    change(entry.local);
    change(entry.central);
}

}  // namespace

TEST_CASE("zip structure: unsafe names are refused with the name") {
    const auto of = [](const std::string& name) {
        RawZip zip;
        zip.add(name, "x");
        return refusal(zip);
    };
    CHECK(of("../evil") == "../evil: its path has a part of dots alone, which would lead to another folder");
    CHECK(of("bag/../../evil") ==
          "bag/../../evil: its path has a part of dots alone, which would lead to another folder");
    CHECK(of("bag/./a") == "bag/./a: its path has a part of dots alone, which would lead to another folder");
    CHECK(of("/etc/passwd") == "/etc/passwd: its path is absolute");
    CHECK(of("bag\\evil") == "bag\\evil: its path has a backslash");
    CHECK(of("C:/evil") == "C:/evil: its path has a colon, as drives and hidden streams have");
    CHECK(of("bag//a") == "bag//a: its path has an empty part");
    CHECK(of("bag/aux.txt") == "bag/aux.txt: its name is one that Windows keeps for devices");
    CHECK(of("bag/a\tb") == "bag/a?b: its name has a control character");
    CHECK(of(std::string("bag/a\0b", 7)) == "bag/a?b: its name has a control character");
    CHECK(of("bag/\xff") == "bag/?: its name is not UTF-8");
    CHECK(of("") == "its path is empty");
}

TEST_CASE("zip structure: duplicate and colliding names") {
    const auto of = [](const std::string& one, const std::string& other) {
        RawZip zip;
        zip.add(one, "");
        zip.add(other, "");
        return refusal(zip);
    };
    CHECK(of("bag/a", "bag/a") == "bag/a: the name stands there twice");
    CHECK(of("bag/a", "bag/A") == "bag/A: its name and bag/a are the same where case or accents are not told apart");
    CHECK(of("bag/\u00e9", "bag/e\u0301").ends_with("are the same where case or accents are not told apart"));
    CHECK(of("bag/data/x", "bag/Data/y") ==
          "bag/Data: its name and bag/data are the same where case or accents are not told apart");
    CHECK(of("bag/a", "bag/a/b") == "bag/a: the name is both a file and a folder");
    CHECK(of("bag/a/b", "bag/a") == "bag/a: the name is both a file and a folder");
    CHECK(of("bag/a", "other/b") == "other/b: the archive does not have exactly one top folder");
    CHECK(of("bag/a", "loose") == "loose: the archive does not have exactly one top folder");
}

TEST_CASE("zip structure: links, special files, encryption, odd methods and features") {
    CHECK(refusal_of([](RawEntry& e) { e.central.attributes = 0120777u << 16; }) ==
          "bag/a: it is a link or a special file");
    CHECK(refusal_of([](RawEntry& e) { e.central.attributes = 0060660u << 16; }) ==
          "bag/a: it is a link or a special file");
    CHECK(refusal_of([](RawEntry& e) { both(e, [](RawHeader& h) { h.flags |= 1; }); }) == "bag/a: it is encrypted");
    CHECK(refusal_of([](RawEntry& e) { both(e, [](RawHeader& h) { h.flags |= 0x2000; }); }) ==
          "bag/a: it is encrypted");
    CHECK(refusal_of([](RawEntry& e) { both(e, [](RawHeader& h) { h.flags |= 0x20; }); }) ==
          "bag/a: it uses a zip feature that packets do not");
    CHECK(refusal_of([](RawEntry& e) { both(e, [](RawHeader& h) { h.method = 12; }); }) ==
          "bag/a: it is packed by method 12, packets are stored or deflated");
    CHECK(refusal_of([](RawEntry& e) { e.central.disk = 1; }) == "bag/a: it lies on another disk");
}

TEST_CASE("zip structure: local headers that tell another story than the directory") {
    CHECK(refusal_of([](RawEntry& e) { e.local.name = "bag/z"; }) ==
          "bag/a: its local header and the directory give it different names");
    CHECK(refusal_of([](RawEntry& e) { e.local.method = 8; }) ==
          "bag/a: its local header and the directory name different methods");
    CHECK(refusal_of([](RawEntry& e) { e.local.size = e.local.packed = 4; }) ==
          "bag/a: its local header and the directory give it different sizes");
    CHECK(refusal_of([](RawEntry& e) { e.local.flags = 0; }) ==
          "bag/a: its local header and the directory have different flags");
    CHECK(refusal_of([](RawEntry& e) { e.local.crc ^= 1; }) ==
          "bag/a: its local header and the directory give it different checksums");
    CHECK(refusal_of([](RawEntry& e) { both(e, [](RawHeader& h) { h.size = 500; }); }) ==
          "bag/a: it is stored, but its two sizes differ");
    CHECK(refusal_of([](RawEntry& e) { e.central.offset = 1; }) ==
          "bag/a: its local header is not where the directory says");
    CHECK(refusal_of([](RawEntry& e) { e.central.offset = 0xfffff0; }) == "bag/a: the archive points outside itself");
    CHECK(refusal_of([](RawEntry& e) { both(e, [](RawHeader& h) { h.packed = h.size = 1u << 30; }); }) ==
          "bag/a: its data runs past the end of the archive");
    CHECK(refusal_of([](RawEntry& e) {
              e.central.extra = le(0x7075, 2) + le(10, 2) + le(1, 1) + le(0, 4) + "bag/z";
          }) == "bag/a: it carries a second, different name");
    CHECK(refusal_of([](RawEntry& e) { e.central.extra = "abc"; }) == "bag/a: its extra fields are broken");
}

TEST_CASE("zip structure: data descriptors must say what the directory says") {
    const auto described = [](RawEntry& e) {
        both(e, [](RawHeader& h) { h.flags |= 8; });
        e.local.crc = e.local.packed = e.local.size = 0;
    };
    CHECK(refusal_of([&](RawEntry& e) {
              described(e);
              e.descriptor = "PK\x07\x08" + le(e.central.crc ^ 1, 4) + le(5, 4) + le(5, 4);
          }) == "bag/a: its data descriptor does not agree with the directory");
    CHECK(refusal_of([&](RawEntry& e) {
              described(e);
              e.descriptor = "PK\x07\x08" + le(e.central.crc, 4) + le(6, 4) + le(5, 4);
          }) == "bag/a: its data descriptor does not agree with the directory");
}

TEST_CASE("zip structure: overlapping entries, the way bombs are built") {
    SUBCASE("two names for the same bytes") {
        RawZip zip;
        zip.add("bag/a", "alpha");
        RawEntry& again = zip.add("bag/a2", "alpha");
        again.hidden = true;
        again.central.offset = 0;
        CHECK(refusal(zip) == "bag/a2: its local header and the directory give it different names");
    }
    SUBCASE("the same name for the same bytes") {
        RawZip zip;
        zip.add("bag/a", "alpha");
        RawEntry& again = zip.add("bag/a", "alpha");
        again.hidden = true;
        again.central.offset = 0;
        CHECK(refusal(zip) == "bag/a: it overlaps the entry before it");
    }
    SUBCASE("an entry inside the data of another") {
        RawZip inner;
        inner.add("bag/b", "beta");
        const Bytes whole = inner.bytes();
        const std::string carried(as_text(ByteView(whole).first(30 + 5 + 4)));
        RawZip zip;
        zip.add("bag/a", carried);
        RawEntry& quoted = zip.add("bag/b", "beta");
        quoted.hidden = true;
        quoted.central.offset = 30 + 5;
        CHECK(refusal(zip) == "bag/b: it overlaps the entry before it");
    }
}

TEST_CASE("zip structure: bytes that belong to nothing") {
    RawZip zip;
    zip.add("bag/a", "alpha");
    RawEntry& second = zip.add("bag/b", "beta");
    SUBCASE("before the archive") {
        zip.before = "MZ stub";
        CHECK(refusal(zip) == "bag/a: there are bytes before the archive");
    }
    SUBCASE("before the archive, unknown to its offsets") {
        Bytes bytes = zip.bytes();
        bytes.insert(bytes.begin(), 5, 0);
        CHECK(check_bytes(bytes).verdict == Verdict::invalid);
    }
    SUBCASE("between entries") {
        second.gap = "hidden";
        CHECK(refusal(zip) == "bag/b: there are bytes before it that belong to nothing");
    }
    SUBCASE("an entry that the directory does not list") {
        second.unlisted = true;
        CHECK(refusal(zip) == "there are bytes before the central directory that belong to nothing");
    }
    SUBCASE("before and behind the directory") {
        zip.before_directory = "hidden";
        CHECK(refusal(zip) == "there are bytes before the central directory that belong to nothing");
        zip.before_directory = "";
        zip.before_end = "hidden";
        CHECK(refusal(zip) == "there are bytes behind the central directory that belong to nothing");
    }
    SUBCASE("behind the archive") {
        zip.behind = std::string(1, '\0');
        CHECK(refusal(zip) == "the archive is cut off, or bytes were put behind its end; copy it again");
    }
}

TEST_CASE("zip structure: end records that lie") {
    RawZip zip;
    zip.add("bag/a", "alpha");
    SUBCASE("the number of entries") {
        zip.entries = 2;
        CHECK(refusal(zip) == "the directory has another number of entries than the end record says");
    }
    SUBCASE("the place and size of the directory") {
        zip.directory_at = 0xfffffff0u;
        CHECK(refusal(zip) == "the central directory is not where the end record says");
        zip.directory_at = 3;
        CHECK(refusal(zip) == "the central directory is broken");
        zip.directory_at.reset();
        zip.directory_size = 10;
        CHECK(refusal(zip) == "the central directory is broken");
    }
    SUBCASE("zip64: no record at all") {
        zip.directory_at = 0xffffffffu;
        CHECK(refusal(zip) == "the zip64 locator is missing or broken");
    }
    SUBCASE("zip64: records that disagree, point elsewhere, or count wrong") {
        zip.zip64 = true;
        zip.entries = 7;
        CHECK(refusal(zip) == "the two end records do not agree");
        zip.entries.reset();
        zip.record_at64 = 0;
        CHECK(refusal(zip) == "the zip64 locator is missing or broken");
        zip.record_at64.reset();
        zip.entries64 = 2;
        CHECK(refusal(zip) == "the directory has another number of entries than the end record says");
        zip.entries64 = std::uint64_t{1} << 40;
        CHECK(refusal(zip) == "the archive has more entries than allowed");
        zip.entries64.reset();
        zip.directory_at64 = std::uint64_t{0} - 8;
        CHECK(refusal(zip) == "the central directory is not where the end record says");
    }
    SUBCASE("zip64: sizes announced but not there, or not the true ones") {
        RawZip other;
        RawEntry& e = other.add("bag/a", "alpha");
        e.central.size = 0xffffffffu;
        CHECK(refusal(other) == "bag/a: its zip64 sizes are missing or of another number than they should be");
        e.central.extra = le(1, 2) + le(8, 2) + le(std::uint64_t{1} << 50, 8);
        CHECK(refusal(other) == "bag/a: its local header and the directory give it different sizes");
    }
    SUBCASE("not a zip") {
        CHECK(first_error(check_bytes(to_bytes(std::string(100, 'x')))) == "this is not a zip archive");
        CHECK(first_error(check_bytes({})) == "this is not a zip archive");
    }
}

TEST_CASE("zip structure: truncation at every byte is refused") {
    const Bytes good = our_zip();
    for (std::size_t cut = 0; cut < good.size(); ++cut)
        CHECK(check_bytes(ByteView(good).first(cut)).verdict == Verdict::invalid);
}

TEST_CASE("zip structure: bombs are refused before anything is unpacked") {
    RawZip bomb;
    bomb.add_deflated("bag/zeros", std::string(8u << 20, '\0'));
    CHECK(refusal(bomb) == "bag/zeros: it would unpack to more than 200 times its size, which looks like a trap");
    RawZip zip;
    zip.add("bag/a", "12345");
    CHECK(refusal(zip, ZipLimits{.file_size = 4}) == "bag/a: it is larger than allowed");
    zip.add("bag/b", "12345");
    CHECK(refusal(zip, ZipLimits{.entries = 1}) == "the archive has more entries than allowed");
    CHECK(refusal(zip, ZipLimits{.total_size = 9}) == "the archive would unpack to more than allowed");
    CHECK(refusal(zip, ZipLimits{.directory_size = 9}) == "the archive's directory is larger than allowed");
}
