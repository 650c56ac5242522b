// What is asked of our packets beyond a valid bag.
#include <doctest/doctest.h>

#include "core/packet/packet_form.h"
#include "tests/core/packet/bag_maker.h"
#include "tests/support/raw_zip.h"

using namespace cotter;
using namespace cotter::test;

namespace {

// Our packet's files after a change, with manifests and signature made anew, as somebody with a key of their own could.
BagTexts signed_anew(BagTexts texts) {
    std::string payload, tags, sum;
    for (const auto& [path, text] : texts)
        if (path.starts_with("data/")) payload += listed(HashKind::sha256, path, text);
    texts["manifest-sha256.txt"] = payload;
    for (const auto& [path, text] : texts)
        if (!path.starts_with("data/") && !path.starts_with("tagmanifest"))
            tags += listed(HashKind::sha256, path, text);
    texts["tagmanifest-sha256.txt"] = tags;
    texts["tagmanifest-sha256.txt.sig"] = test_key().sign(as_bytes(tags), kPacketNamespace);
    return texts;
}

void replace(std::string& text, const std::string& from, const std::string& to) {
    REQUIRE(text.find(from) != std::string::npos);
    text.replace(text.find(from), from.size(), to);
}

}  // namespace

TEST_CASE("our packet: valid as zip and as folder, with its facts") {
    CHECK(check_folder(signed_anew(our_packet())).verdict == Verdict::valid);
    for (const CheckReport& report : {check_bytes(our_zip()), check_folder(our_packet())}) {
        CHECK_MESSAGE(report.verdict == Verdict::valid, first_error(report));
        CHECK(report.reasons.empty());
        CHECK(report.ours);
        CHECK(report.job == test_face().job);
        CHECK(report.revision == 1);
        CHECK(report.signer_fingerprint == test_key().fingerprint());
        CHECK(report.files == 3);
        CHECK(as_text(report.job_json).starts_with("{\"format\": \"cotter-job\""));
        CHECK(report.tagmanifest_sha256 == sha256_hex(as_bytes(our_packet()["tagmanifest-sha256.txt"])));
    }
}

TEST_CASE("our packet: signatures that are missing or do not fit") {
    BagTexts texts = our_packet();
    const auto error = [&] { return first_error(check_folder(texts)); };
    const std::string sig = "tagmanifest-sha256.txt.sig";
    SUBCASE("gone") {
        texts.erase(sig);
        CHECK(error() == sig + ": every packet of Cotter has this file, this one does not");
    }
    SUBCASE("by another hand over another list") {
        texts[sig] = test_key().sign(as_bytes("another list"), kPacketNamespace);
        CHECK(error() == sig + ": the signature does not fit: what was signed has been changed");
    }
    SUBCASE("for another purpose") {
        texts[sig] = test_key().sign(as_bytes(texts["tagmanifest-sha256.txt"]), "file");
        CHECK(error() == sig + ": the signature was made for another purpose");
    }
    SUBCASE("rubbish") {
        texts[sig] = "-----BEGIN SSH SIGNATURE-----\nAAAA\n-----END SSH SIGNATURE-----\n";
        CHECK(error() == sig + ": the signature is not an SSH signature by an ed25519 key with sha512");
    }
}

TEST_CASE("our packet: files and labels, even when signed anew") {
    BagTexts texts = our_packet();
    const auto error = [&] { return first_error(check_folder(signed_anew(texts))); };
    std::string& info = texts["bag-info.txt"];
    SUBCASE("a file beside the signed list") {
        BagTexts with = our_packet();
        with["note.txt"] = "trust me";
        CHECK(first_error(check_folder(with)) == "note.txt: the file is not covered by the signed list");
    }
    SUBCASE("no job document") {
        texts.erase("data/job.json");
        replace(info, "Payload-Oxum", "X-Oxum");
        CHECK(error() == "data/job.json: every packet of Cotter has this file, this one does not");
    }
    SUBCASE("labels") {
        replace(info, "External-Identifier", "X-Identifier");
        CHECK(error() == "bag-info.txt: a packet of Cotter says its External-Identifier there, this one does not");
    }
    SUBCASE("the revision") {
        replace(info, "Revision: 1", "Revision: one");
        CHECK(error() == "bag-info.txt: its Revision is not a number from 1");
    }
    SUBCASE("a second revision that names no first") {
        replace(info, "Revision: 1", "Revision: 2");
        CHECK(error().starts_with("bag-info.txt: a first revision names no earlier one"));
    }
    SUBCASE("times that contradict each other") {
        replace(info, "Bagging-Date: 2026-05-14", "Bagging-Date: 2026-05-15");
        CHECK(error() == "bag-info.txt: its Bagging-Date and Packing-Time are different days");
    }
}

TEST_CASE("our packet: later revisions name the one before") {
    PacketFace face = test_face();
    face.revision = 2;
    face.previous_tagmanifest_sha256 = std::string(64, 'a');
    const CheckReport report = check_bytes(our_zip(face));
    CHECK_MESSAGE(report.verdict == Verdict::valid, first_error(report));
    CHECK(report.revision == 2);
    CHECK(report.previous_tagmanifest_sha256 == std::string(64, 'a'));
}

TEST_CASE("our packet: another archive around the same files is refused") {
    const BagTexts texts = our_packet();
    const std::string name = test_face().name;
    RawZip zip;
    const auto add = [&](const std::string& top, const std::string& path) -> RawEntry& {
        const bool store = packet_form::packing_of(path) == Packing::store;
        RawEntry& e =
            store ? zip.add(top + "/" + path, texts.at(path)) : zip.add_deflated(top + "/" + path, texts.at(path));
        e.local.time = e.central.time = DosTime::of(test_face().at).time;
        return e;
    };
    const auto add_all = [&](const std::string& top) {
        for (const char* path : {"bagit.txt", "data/photos/axle1-left_cap_before_01.jpg", "data/job.json",
                                 "data/readings.csv", "bag-info.txt", "manifest-sha256.txt", "tagmanifest-sha256.txt"})
            add(top, path);
        return &add(top, "tagmanifest-sha256.txt.sig");
    };
    const auto error = [&] { return first_error(check_bytes(zip.bytes())); };
    SUBCASE("the honest one passes; a different deflate only leaves notes") {
        add_all(name);
        const CheckReport report = check_bytes(zip.bytes());
        CHECK_MESSAGE(report.verdict == Verdict::valid, first_error(report));
        for (const Reason& reason : report.reasons) CHECK(reason.weight == Weight::note);
    }
    SUBCASE("a comment") {
        add_all(name);
        zip.comment = "signed, the management";
        CHECK(error() == "the archive carries a comment, which Cotter never writes");
    }
    SUBCASE("attributes") {
        add_all(name)->central.attributes = 0100777u << 16;
        CHECK(error() ==
              name + "/tagmanifest-sha256.txt.sig: its headers in the archive are not as Cotter writes them");
    }
    SUBCASE("a time") {
        RawEntry* last = add_all(name);
        last->local.time = last->central.time = 0;
        CHECK(error() ==
              name + "/tagmanifest-sha256.txt.sig: its headers in the archive are not as Cotter writes them");
    }
    SUBCASE("another name") {
        add_all("2026-05-14_NUR-08_3f9c1a2b_r1");
        CHECK(error() == "2026-05-14_NUR-08_3f9c1a2b_r1: the packet was made under the name " + name);
    }
    SUBCASE("another order") {
        add(name, "data/job.json");
        for (const auto& [path, text] : texts)
            if (path != "data/job.json") add(name, path);
        CHECK(error() == "the files do not stand in the archive in the order in which Cotter writes them");
    }
    SUBCASE("a folder entry") {
        zip.add(name + "/data/", "").central.attributes = 0040755u << 16;
        add_all(name);
        CHECK(error().ends_with("it is not at its place in the archive"));
    }
}

TEST_CASE("our packet: the hooks see only what is found good, and their answer counts") {
    int pictures = 0, jobs = 0;
    CheckHooks hooks;
    hooks.image = [&](const std::string& path, ByteView bytes) -> Result<> {
        CHECK(path == "data/photos/axle1-left_cap_before_01.jpg");
        CHECK(bytes.size() == 15);
        ++pictures;
        return {};
    };
    JobFacts facts{test_face().job, 1, {}, {"photos/axle1-left_cap_before_01.jpg"}};
    hooks.job = [&](ByteView) -> Result<JobFacts> {
        ++jobs;
        return facts;
    };
    const auto error = [&] { return first_error(check_bytes(our_zip(), {}, hooks)); };
    SUBCASE("all good") {
        CHECK(error() == "");
        CHECK(pictures == 1);
        CHECK(jobs == 1);
    }
    SUBCASE("nothing is shown of a packet that is not whole") {
        BagTexts texts = our_packet();
        texts.erase("data/readings.csv");
        CHECK(check_folder(texts, hooks).verdict == Verdict::invalid);
        CHECK(pictures + jobs == 0);
    }
    SUBCASE("no picture is shown whose bytes have changed") {
        BagTexts texts = our_packet();
        texts["data/photos/axle1-left_cap_before_01.jpg"][3] = 'A';
        CHECK(check_folder(texts, hooks).verdict == Verdict::invalid);
        CHECK(pictures + jobs == 0);
    }
    SUBCASE("a picture that is none") {
        hooks.image = [](const std::string&, ByteView) -> Result<> {
            return fail(Errc::refused, "this is not a photo");
        };
        CHECK(error() == "data/photos/axle1-left_cap_before_01.jpg: this is not a photo");
        BagTexts foreign = plain_bag("1.0", HashKind::sha256, {{"a.JPG", "x"}});
        CHECK(check_folder(foreign, hooks).verdict == Verdict::valid_with_warnings);
    }
    SUBCASE("a job document that does not keep to its schema") {
        hooks.job = [](ByteView) -> Result<JobFacts> {
            return fail(Errc::too_new, "too new", "version", "use a newer Cotter");
        };
        CHECK(error() == "data/job.json: too new: version; use a newer Cotter");
    }
    SUBCASE("a job document of another job, another revision, or with other pictures") {
        facts.revision = 2;
        CHECK(error() == "data/job.json: it names another revision than bag-info.txt");
        facts.job = "00000000-0000-4000-8000-000000000009";
        CHECK(error() == "data/job.json: it names another job than bag-info.txt");
        facts = {test_face().job, 1, {}, {"photos/none.jpg"}};
        CHECK(error() == "data/photos/none.jpg: job.json names this picture, but it is not in the packet");
    }
}
