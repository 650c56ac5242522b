// Bags of ours and of others: valid ones, and each way of not being one.
#include <doctest/doctest.h>

#include "tests/core/packet/bag_maker.h"

using namespace cotter;
using namespace cotter::test;

TEST_CASE("check: a packet of ours is valid as zip and as folder, and names its signer") {
    for (const CheckReport& report : {check_bytes(zipped(our_packet())), check_folder(our_packet())}) {
        CHECK_MESSAGE(report.verdict == Verdict::valid, first_error(report));
        CHECK(report.ours);
        CHECK(report.job == "00000000-0000-4000-8000-000000000001");
        CHECK(report.revision == 1);
        CHECK(report.signer_fingerprint.starts_with("SHA256:"));
        CHECK(report.files == 2);
    }
}

TEST_CASE("check: bags that Cotter did not make") {
    const BagTexts payload{{"a.txt", "alpha"}, {"sub/b.txt", "beta"}};
    SUBCASE("0.97 with md5 is valid with a warning") {
        const auto report = check_folder(plain_bag("0.97", HashKind::md5, payload));
        CHECK_MESSAGE(report.verdict == Verdict::valid_with_warnings, first_error(report));
        CHECK(report.bag_version == "0.97");
        CHECK_FALSE(report.ours);
    }
    SUBCASE("1.0 with sha512, zipped") {
        CHECK(check_bytes(zipped(plain_bag("1.0", HashKind::sha512, payload))).verdict == Verdict::valid);
    }
    SUBCASE("two manifests that agree, and then do not") {
        BagTexts texts = plain_bag("1.0", HashKind::sha256, payload);
        for (const auto& [path, text] : plain_bag("1.0", HashKind::sha1, payload)) texts[path] = text;
        CHECK(check_folder(texts).verdict == Verdict::valid_with_warnings);
        texts["manifest-sha1.txt"] = texts["manifest-sha1.txt"].substr(0, texts["manifest-sha1.txt"].find('\n') + 1);
        CHECK(first_error(check_folder(texts)) == "data/sub/b.txt: the file is in the bag but not in its manifests");
    }
    SUBCASE("percent-encoded names") {
        BagTexts texts = plain_bag("1.0", HashKind::sha256, {{"100%.txt", "full"}});
        CHECK(texts["manifest-sha256.txt"].find("100%25.txt") != std::string::npos);
        CHECK_MESSAGE(check_folder(texts).verdict == Verdict::valid, first_error(check_folder(texts)));
        BagTexts odd = plain_bag("1.0", HashKind::sha256, {{"line\nend", "x"}});
        CHECK(odd["manifest-sha256.txt"].find("line%0Aend") != std::string::npos);
        CHECK_MESSAGE(check_folder(odd).verdict == Verdict::valid, first_error(check_folder(odd)));
    }
    SUBCASE("quirks of old checksum tools") {
        BagTexts texts = plain_bag("0.97", HashKind::sha256, {{"a.txt", "alpha"}});
        std::string& manifest = texts["manifest-sha256.txt"];
        manifest.replace(manifest.find("  data"), 6, " *./data");
        CHECK(check_folder(texts).verdict == Verdict::valid_with_warnings);
    }
}

TEST_CASE("check: what a bag must not be") {
    BagTexts texts = plain_bag("1.0", HashKind::sha256, {{"a.txt", "alpha"}});
    const auto error = [&] { return first_error(check_folder(texts)); };
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
        CHECK(error() == "data/extra: the file is in the bag but not in its manifests");
    }
    SUBCASE("fetch.txt") {
        texts["fetch.txt"] = "http://example.invalid/b 4 data/b\n";
        CHECK(error().starts_with("fetch.txt: the bag is incomplete"));
    }
    SUBCASE("no bagit.txt") {
        texts.erase("bagit.txt");
        CHECK(error().starts_with("bagit.txt: this is not a bag"));
    }
    SUBCASE("another version, another encoding, a byte order mark") {
        texts["bagit.txt"] = "BagIt-Version: 2.0\nTag-File-Character-Encoding: UTF-8\n";
        CHECK(error() == "its version is 2.0, only 0.97 and 1.0 are read: bagit.txt");
        texts["bagit.txt"] = "BagIt-Version: 1.0\nTag-File-Character-Encoding: ISO-8859-1\n";
        CHECK(error() == "its encoding is ISO-8859-1, only UTF-8 is read: bagit.txt");
        texts["bagit.txt"] = "\xEF\xBB\xBF" "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";
        CHECK(error() == "it begins with a byte order mark: bagit.txt");
    }
    SUBCASE("no manifest, an unknown algorithm, rubbish in it, a path out of it") {
        const std::string good = texts["manifest-sha256.txt"];
        texts.erase("manifest-sha256.txt");
        CHECK(error() == "the bag has no payload manifest that can be checked");
        texts["manifest-whirlpool.txt"] = good;
        CHECK(error() == "the bag has no payload manifest that can be checked");
        texts["manifest-sha256.txt"] = "hello\n";
        CHECK(error() == "'hello' is not a checksum and a path: manifest-sha256.txt");
        texts["manifest-sha256.txt"] = good + std::string(64, 'a') + "  ../secret\n";
        CHECK(error() == "its path would lead out of its folder (../secret): manifest-sha256.txt");
    }
    SUBCASE("a wrong Payload-Oxum") {
        texts["bag-info.txt"] = "Payload-Oxum: 6.1\n";
        CHECK(error() == "bag-info.txt: Payload-Oxum says 6.1, the payload has 5.1");
    }
    SUBCASE("nothing at all") {
        MemoryFiles files;
        SerialWorkers workers;
        CHECK(check(files, workers, "/nowhere.zip", {}).verdict == Verdict::invalid);
    }
}

TEST_CASE("check: what is asked of our packets beyond a valid bag") {
    BagTexts texts = our_packet();
    const auto error = [&] { return first_error(check_folder(texts)); };
    SUBCASE("the signature gone") {
        texts.erase("tagmanifest-sha256.txt.sig");
        CHECK(error() == "tagmanifest-sha256.txt.sig: the packet's file is missing");
    }
    SUBCASE("the signature of another list") {
        BagTexts other = our_packet();
        std::string& sig = texts["tagmanifest-sha256.txt.sig"];
        sig[sig.size() / 2] = sig[sig.size() / 2] == 'A' ? 'B' : 'A';
        CHECK(error().starts_with("tagmanifest-sha256.txt.sig: the signature"));
    }
    SUBCASE("a file beside the signed list") {
        texts["note.txt"] = "trust me";
        CHECK(error() == "note.txt: the file is not covered by the signed list");
    }
}
