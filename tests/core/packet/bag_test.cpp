// Bags of other programs: valid ones of both versions, and each way of not being one.
#include <doctest/doctest.h>

#include "core/packet/bag.h"
#include "tests/core/packet/bag_maker.h"

using namespace cotter;
using namespace cotter::test;

namespace {

const BagTexts kPayload{{"a.txt", "alpha"}, {"sub/b.txt", "beta"}};

BagTexts merged(BagTexts one, const BagTexts& other) {
    for (const auto& [path, text] : other) one[path] = text;
    return one;
}

std::string ascii_upper(std::string text) {
    for (char& c : text)
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return text;
}

BagTexts with_tag_manifest(BagTexts texts) {
    std::string list;
    for (const auto& [path, text] : texts)
        if (!path.starts_with("data/")) list += listed(HashKind::sha256, path, text);
    texts["tagmanifest-sha256.txt"] = list;
    return texts;
}

}  // namespace

TEST_CASE("bag: both versions and all four algorithms, as folder and as zip") {
    for (const char* version : {"0.97", "1.0"})
        for (const HashKind kind : {HashKind::md5, HashKind::sha1, HashKind::sha256, HashKind::sha512}) {
            const BagTexts texts = with_tag_manifest(plain_bag(version, kind, kPayload));
            for (const CheckReport& report : {check_folder(texts), check_bytes(zipped(texts))}) {
                const bool old = kind == HashKind::md5 || kind == HashKind::sha1;
                CHECK_MESSAGE(report.verdict == (old ? Verdict::valid_with_warnings : Verdict::valid),
                              first_error(report));
                CHECK(report.bag_version == version);
                CHECK(report.algorithms.front() == hash_name(kind));
                CHECK(report.files == 2);
                CHECK(report.bytes == 9);
                CHECK_FALSE(report.ours);
                CHECK(report.signer_key.empty());
                CHECK(report.tagmanifest_sha256 == sha256_hex(as_bytes(texts.at("tagmanifest-sha256.txt"))));
            }
        }
}

TEST_CASE("bag: several manifests, by the rules of each version") {
    const BagTexts both =
        merged(plain_bag("1.0", HashKind::sha512, kPayload), plain_bag("1.0", HashKind::sha256, kPayload));
    CHECK(check_folder(both).verdict == Verdict::valid);
    BagTexts partial = both;
    partial["manifest-sha256.txt"] = listed(HashKind::sha256, "data/a.txt", "alpha");
    CHECK(first_error(check_folder(partial)) ==
          "data/sub/b.txt: the file is in the bag but not in manifest-sha256.txt");
    partial["bagit.txt"] = "BagIt-Version: 0.97\nTag-File-Character-Encoding: UTF-8\n";
    CHECK(check_folder(partial).verdict == Verdict::valid);
    partial["manifest-sha512.txt"] = listed(HashKind::sha512, "data/a.txt", "alpha");
    CHECK(first_error(check_folder(partial)) == "data/sub/b.txt: the file is in the bag but in none of its manifests");
    BagTexts odds = both;
    odds["manifest-sha256.txt"] =
        listed(HashKind::sha256, "data/a.txt", "other") + listed(HashKind::sha256, "data/sub/b.txt", "beta");
    CHECK(first_error(check_folder(odds)) ==
          "data/a.txt: the file has been changed: its sha256 is not the one in manifest-sha256.txt");
}

TEST_CASE("bag: names in manifests") {
    SUBCASE("percent-encoded") {
        BagTexts texts = plain_bag("1.0", HashKind::sha256, {{"100%.txt", "full"}});
        CHECK(texts["manifest-sha256.txt"].ends_with("data/100%25.txt\n"));
        CHECK(check_folder(texts).verdict == Verdict::valid);
        CHECK(check_bytes(zipped(texts)).verdict == Verdict::valid);
        texts = plain_bag("1.0", HashKind::sha256, {{"line\nend", "x"}, {"re\rturn", "y"}, {"%0Aliteral", "z"}});
        CHECK(texts["manifest-sha256.txt"].find("line%0Aend") != std::string::npos);
        CHECK(texts["manifest-sha256.txt"].find("%250Aliteral") != std::string::npos);
        CHECK_MESSAGE(check_folder(texts).verdict == Verdict::valid, first_error(check_folder(texts)));
    }
    SUBCASE("a '%' left as it is: by the rules in 0.97, a warning in 1.0") {
        for (const char* version : {"0.97", "1.0"}) {
            BagTexts texts = plain_bag(version, HashKind::sha256, {{"a%25b", "x"}});
            texts["manifest-sha256.txt"] = sha256_hex(as_bytes("x")) + "  data/a%25b\n";
            const bool old = std::string(version) == "0.97";
            CHECK(check_folder(texts).verdict == (old ? Verdict::valid : Verdict::valid_with_warnings));
        }
    }
    SUBCASE("quirks of old checksum tools") {
        BagTexts texts = plain_bag("0.97", HashKind::sha256, {});
        texts["data/a.txt"] = "alpha";
        texts["data/b.txt"] = "beta";
        texts["manifest-sha256.txt"] = sha256_hex(as_bytes("alpha")) + " *data/a.txt\r\n" +
                                       ascii_upper(sha256_hex(as_bytes("beta"))) + "\t./data/b.txt\r\n";
        const CheckReport report = check_folder(texts);
        CHECK_MESSAGE(report.verdict == Verdict::valid_with_warnings, first_error(report));
        CHECK(report.reasons.size() == 2);
        CHECK(first_warning(report) == "manifest-sha256.txt: a path begins with '*', as old checksum tools write it");
    }
    SUBCASE("accents composed in the manifest, decomposed on the disk") {
        BagTexts texts = plain_bag("1.0", HashKind::sha256, {{"caf\u00e9.txt", "x"}});
        texts["data/cafe\u0301.txt"] = texts["data/caf\u00e9.txt"];
        texts.erase("data/caf\u00e9.txt");
        const CheckReport report = check_folder(texts);
        CHECK_MESSAGE(report.verdict == Verdict::valid_with_warnings, first_error(report));
        CHECK(first_warning(report).find("Unicode normalisation") != std::string::npos);
    }
    SUBCASE("names that not every system can hold") {
        const CheckReport report = check_bytes(zipped(plain_bag("1.0", HashKind::sha256, {{"what?.txt", "x"}})));
        CHECK(report.verdict == Verdict::valid_with_warnings);
        CHECK(first_warning(report) == "data/what?.txt: its name has a '?', which not every system allows");
    }
}

TEST_CASE("bag: payload that is not as listed") {
    BagTexts texts = plain_bag("1.0", HashKind::sha256, {{"a.txt", "alpha"}});
    const auto error = [&] {
        const std::string folder = first_error(check_folder(texts));
        CHECK(folder == first_error(check_bytes(zipped(texts))));
        return folder;
    };
    std::string& manifest = texts["manifest-sha256.txt"];
    SUBCASE("changed") {
        texts["data/a.txt"] = "Alpha";
        CHECK(error() == "data/a.txt: the file has been changed: its sha256 is not the one in manifest-sha256.txt");
    }
    SUBCASE("missing") {
        texts.erase("data/a.txt");
        texts["data/other"] = "";
        CHECK(error() == "data/a.txt: the file is missing; manifest-sha256.txt lists it");
    }
    SUBCASE("extra") {
        texts["data/extra"] = "";
        CHECK(error() == "data/extra: the file is in the bag but not in manifest-sha256.txt");
    }
    SUBCASE("listed twice") {
        manifest += manifest;
        CHECK(error() == "manifest-sha256.txt: data/a.txt is listed twice");
        texts["bagit.txt"] = "BagIt-Version: 0.97\nTag-File-Character-Encoding: UTF-8\n";
        CHECK(check_folder(texts).verdict == Verdict::valid_with_warnings);
    }
    SUBCASE("in the wrong manifest") {
        manifest += listed(HashKind::sha256, "bagit.txt", texts["bagit.txt"]);
        CHECK(error() == "manifest-sha256.txt: bagit.txt does not belong into this manifest");
    }
    SUBCASE("no payload at all") {
        texts.erase("data/a.txt");
        manifest = "";
        CHECK(error() == "data: the bag has no payload folder");
    }
    SUBCASE("a wrong Payload-Oxum") {
        texts["bag-info.txt"] = "Payload-Oxum: 6.1\n";
        CHECK(error() == "bag-info.txt: Payload-Oxum says 6.1, the payload has 5.1");
    }
}

TEST_CASE("bag: files to fetch") {
    BagTexts texts = plain_bag("1.0", HashKind::sha256, {{"a.txt", "alpha"}});
    texts["fetch.txt"] = "http://example.invalid/a 5 data/a.txt\n";
    CHECK(first_warning(check_folder(texts)) == "fetch.txt: the bag lists files to fetch; they are all here");
    texts["fetch.txt"] += "http://example.invalid/b - data/b c.txt\n";
    CHECK(first_error(check_folder(texts)) ==
          "fetch.txt: the bag is incomplete: data/b c.txt would have to be fetched from elsewhere");
    texts["fetch.txt"] = "rubbish\n";
    CHECK(first_error(check_folder(texts)) == "fetch.txt: 'rubbish' is not an address, a length and a path");
}

TEST_CASE("bag: tag files and what lists them") {
    BagTexts texts = with_tag_manifest(plain_bag("1.0", HashKind::sha256, kPayload));
    std::string& list = texts["tagmanifest-sha256.txt"];
    SUBCASE("one that nothing lists is a warning") {
        texts["note.txt"] = "trust me";
        CHECK(first_warning(check_folder(texts)) ==
              "note.txt: no tag manifest lists this file, so changes to it would not show");
        CHECK(check_folder(texts).verdict == Verdict::valid_with_warnings);
    }
    SUBCASE("a payload manifest must be listed") {
        list = listed(HashKind::sha256, "bagit.txt", texts["bagit.txt"]);
        CHECK(first_error(check_folder(texts)) ==
              "manifest-sha256.txt: tagmanifest-sha256.txt does not list this manifest");
    }
    SUBCASE("a tag manifest may not") {
        const std::string other = listed(HashKind::md5, "manifest-sha256.txt", texts["manifest-sha256.txt"]);
        texts["tagmanifest-md5.txt"] = other;
        list += listed(HashKind::sha256, "tagmanifest-md5.txt", other);
        CHECK(first_error(check_folder(texts)).ends_with("tagmanifest-md5.txt may not be listed in a tag manifest"));
    }
    SUBCASE("a changed one shows") {
        texts["bagit.txt"] += "\n";
        CHECK(first_error(check_folder(texts)) ==
              "bagit.txt: the file has been changed: its sha256 is not the one in tagmanifest-sha256.txt");
    }
}

TEST_CASE("bag: declarations, encodings, byte order marks") {
    BagTexts texts = plain_bag("1.0", HashKind::sha256, {{"a.txt", "alpha"}});
    const auto error = [&] { return first_error(check_folder(texts)); };
    const auto declare = [&](const std::string& version, const std::string& encoding) {
        texts["bagit.txt"] = "BagIt-Version: " + version + "\nTag-File-Character-Encoding: " + encoding + "\n";
    };
    declare("2.0", "UTF-8");
    CHECK(error() == "bagit.txt: its version is 2.0, only 0.97 and 1.0 are read");
    declare("0.96", "UTF-8");
    CHECK(error() == "bagit.txt: its version is 0.96, only 0.97 and 1.0 are read");
    declare("1.0", "UTF-16");
    CHECK(error() == "bagit.txt: its encoding is UTF-16; read are UTF-8, US-ASCII and ISO-8859-1");
    texts["bagit.txt"] = "BagIt-Version: 1.0\n";
    CHECK(error() == "bagit.txt: it does not have its two lines, version and encoding");
    texts["bagit.txt"] =
        "\xEF\xBB\xBF"
        "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";
    CHECK(error() == "bagit.txt: it begins with a byte order mark");
    texts.erase("bagit.txt");
    CHECK(error() == "bagit.txt: this is not a bag: the file is missing");

    texts = plain_bag("1.0", HashKind::sha256, {{"caf\u00e9.txt", "x"}});
    declare("1.0", "ISO-8859-1");
    texts["manifest-sha256.txt"] = sha256_hex(as_bytes("x")) + "  data/caf\xe9.txt\n";
    CHECK_MESSAGE(error() == "", error());
    CHECK(check_folder(texts).verdict == Verdict::valid_with_warnings);
    declare("1.0", "UTF-8");
    CHECK(error() == "manifest-sha256.txt: it is not UTF-8");
    texts["manifest-sha256.txt"] = "\xEF\xBB\xBF" + sha256_hex(as_bytes("x")) + "  data/caf\u00e9.txt\n";
    CHECK(first_warning(check_folder(texts)) ==
          "manifest-sha256.txt: it begins with a byte order mark, which does not belong there");
}

TEST_CASE("bag: manifests that cannot be used") {
    BagTexts texts = plain_bag("1.0", HashKind::sha256, {{"a.txt", "alpha"}});
    const auto error = [&] { return first_error(check_folder(texts)); };
    const std::string good = texts["manifest-sha256.txt"];
    texts.erase("manifest-sha256.txt");
    CHECK(error() == "the bag has no payload manifest that can be checked");
    texts["manifest-whirlpool.txt"] = good;
    CHECK(error() == "the bag has no payload manifest that can be checked");
    CHECK(first_warning(check_folder(texts)) ==
          "manifest-whirlpool.txt: its algorithm 'whirlpool' is not known, so it was not checked");
    texts["manifest-sha256.txt"] = "hello\n";
    CHECK(error() == "manifest-sha256.txt: 'hello' is not a checksum and a path");
    texts["manifest-sha256.txt"] = good + std::string(64, 'a') + "  ../secret\n";
    CHECK(error() ==
          "manifest-sha256.txt: its path has a part of dots alone, which would lead to another folder (../secret)");
    texts["manifest-sha256.txt"] = good + std::string(64, 'a') + "  /etc/passwd\n";
    CHECK(error() == "manifest-sha256.txt: its path is absolute (/etc/passwd)");
}

TEST_CASE("bag: names of manifests") {
    CHECK(manifest_name("manifest-sha256.txt")->kind == HashKind::sha256);
    CHECK(manifest_name("tagmanifest-SHA-512.txt")->kind == HashKind::sha512);
    CHECK(manifest_name("tagmanifest-md5.txt")->tags);
    CHECK_FALSE(manifest_name("manifest-s-h-a256.txt")->kind);
    for (const char* other : {"manifest.txt", "manifest-md5", "xmanifest-md5.txt"}) CHECK_FALSE(manifest_name(other));
}

TEST_CASE("bag: bag-info.txt") {
    const auto info = parse_bag_info("Contact-Name: A. B.\r\n\r\nNote:  first\n   second\n\tthird \nEmpty:\n");
    REQUIRE(info);
    CHECK(*info == BagInfo{{"Contact-Name", "A. B."}, {"Note", "first second third"}, {"Empty", ""}});
    CHECK(*value_of(*info, "contact-NAME") == "A. B.");
    CHECK(value_of(*info, "Other") == nullptr);
    CHECK_FALSE(parse_bag_info(" continued\n"));
    CHECK_FALSE(parse_bag_info("no colon\n"));
    CHECK(bag_info_txt({{"A", "one\ntwo"}}) == "A: one two\n");
}

TEST_CASE("bag: a hostile one cannot fill the report") {
    BagTexts texts = plain_bag("1.0", HashKind::sha256, {{"a.txt", "alpha"}});
    for (int i = 0; i < 1'000; ++i)
        texts["manifest-sha256.txt"] += listed(HashKind::sha256, "data/" + std::to_string(i), "");
    const CheckReport report = check_folder(texts);
    CHECK(report.verdict == Verdict::invalid);
    CHECK(report.reasons.size() == 201);
    CHECK(report.reasons.back().what == "there is more to say of this kind, 800 times");
}

TEST_CASE("bag: nothing there") {
    MemoryFiles files;
    SerialWorkers workers;
    CHECK(check(files, workers, "/nowhere.zip", {}).verdict == Verdict::invalid);
    CHECK_FALSE(check(files, workers, "/nowhere.zip", {}).reasons.empty());
}
