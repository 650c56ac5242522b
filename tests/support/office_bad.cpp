// Packets that must be refused, one kind after the other.
#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <utility>

#include "core/packet/zip_reader.h"
#include "tests/support/raw_zip.h"
#include "tests/support/memory_files.h"
#include "tests/support/office_packets.h"

namespace cotter::test {

namespace {

std::string replaced(std::string text, std::string_view what, std::string_view by) {
    const auto at = text.find(what);
    if (at != std::string::npos) text.replace(at, what.size(), by);
    return text;
}

// The files of a sealed packet, below its top folder.
std::map<std::string, Bytes> unpacked(const Bytes& zip) {
    MemoryFiles files;
    files.put("/zip", zip);
    const auto reader = sure(files.open("/zip"));
    std::map<std::string, Bytes> out;
    const ZipIndex index = sure(read_zip_index(*reader, {}));
    for (const ZipEntry& entry : index.entries) {
        Bytes& bytes = out[entry.name.substr(entry.name.find('/') + 1)];
        sure(
            read_entry(*reader, entry, [&](ByteView piece) { bytes.insert(bytes.end(), piece.begin(), piece.end()); }));
    }
    return out;
}

// What the kinds have to work with.
struct Material {
    int number;
    OfficeShape shape;
    const PhotoMaker& photos;

    [[nodiscard]] PacketParts parts() const { return office_parts(office_job(number, shape), number, photos); }
    [[nodiscard]] Bytes zip() const { return seal(parts()).zip; }
    [[nodiscard]] std::string text() const { return fmt::format("packet {}", number); }
};

Bytes raw(const std::function<void(RawZip&)>& fill) {
    RawZip zip;
    fill(zip);
    return zip.bytes();
}

BadPacket zipped(std::string kind, std::string says, Bytes zip) {
    return {std::move(kind), std::move(says), std::move(zip), {}};
}

BadPacket in_folder(std::string kind, std::string says, const Material& m,
                    const std::function<void(std::map<std::string, Bytes>&)>& change) {
    BadPacket out{std::move(kind), std::move(says), {}, unpacked(m.zip())};
    change(out.files);
    return out;
}

BadPacket sealed(std::string kind, std::string says, const Material& m,
                 const std::function<void(PacketParts&)>& change) {
    PacketParts parts = m.parts();
    change(parts);
    return {std::move(kind), std::move(says), seal(parts).zip, {}};
}

BadPacket with_json(std::string kind, std::string says, const Material& m, std::string_view what, std::string_view by) {
    return sealed(std::move(kind), std::move(says), m, [&](PacketParts& p) {
        p.change_json = [what, by](std::string& json) { json = replaced(json, what, by); };
    });
}

Bytes encrypted(const Material& m) {
    return raw([&](RawZip& zip) {
        RawEntry& entry = zip.add("bag/a", m.text());
        entry.local.flags |= 1;
        entry.central.flags |= 1;
    });
}

// The first entry's data holds a whole entry, to which the directory points as well.
Bytes overlapping(const Material& m) {
    RawZip inner;
    inner.add("bag/b", m.text());
    const Bytes whole = inner.bytes();
    const std::string carried(as_text(ByteView(whole).first(30 + 5 + m.text().size())));
    return raw([&](RawZip& zip) {
        zip.add("bag/a", carried);
        RawEntry& quoted = zip.add("bag/b", m.text());
        quoted.hidden = true;
        quoted.central.offset = 30 + 5;
    });
}

BadPacket bad_archive(int kind, const Material& m) {
    const Bytes good = m.zip();
    const auto named = [&](const std::string& name, const std::string& also = {}) {
        return raw([&](RawZip& zip) {
            zip.add(name, m.text());
            if (!also.empty()) zip.add(also, m.text());
        });
    };
    switch (kind) {
        case 0:
            return zipped("cut off", "cut off",
                          Bytes(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(good.size() / 2)));
        case 1:
            return zipped("no archive", "not a zip", to_bytes("this is " + m.text()));
        case 2:
            return zipped("path upwards", "dots alone", named("bag/../../" + m.text()));
        case 3:
            return zipped("absolute path", "its path is absolute", named("/etc/" + m.text()));
        case 4:
            return zipped("link", "a link or a special file",
                          raw([&](RawZip& zip) { zip.add("bag/a", m.text()).central.attributes = 0120777u << 16; }));
        case 5:
            return zipped("name twice", "the name stands there twice", named("bag/a", "bag/a"));
        case 6:
            return zipped("names alike", "are the same where case", named("bag/a", "bag/A"));
        case 7:
            return zipped("encrypted", "it is encrypted", encrypted(m));
        case 8:
            return zipped("bomb", "looks like a trap",
                          raw([&](RawZip& zip) { zip.add_deflated("bag/a", std::string(8u << 20, 'x')); }));
        case 9:
            return zipped("lying size", "local header and the directory",
                          raw([&](RawZip& zip) { zip.add("bag/a", m.text()).local.size += 7; }));
        case 10:
            return zipped("overlap", "overlaps the entry before it", overlapping(m));
        default:
            return zipped("bytes between", "belong to no", raw([&](RawZip& zip) {
                              zip.add("bag/a", m.text());
                              zip.add("bag/b", m.text()).gap = "hidden";
                          }));
    }
}

BadPacket bad_bag(int kind, const Material& m) {
    switch (kind) {
        case 12: {
            Bytes changed = m.zip();
            changed[changed.size() / 3] ^= 1;  // within a photo
            return zipped("photo changed", "sum", std::move(changed));
        }
        case 13:
            return in_folder("file missing", "readings.csv", m, [](auto& files) { files.erase("data/readings.csv"); });
        case 14:
            return in_folder("file too many", "extra.txt", m,
                             [](auto& files) { files["data/extra.txt"] = to_bytes("x"); });
        case 15:
            return in_folder("another's signature", "signature", m, [&](auto& files) {
                files["tagmanifest-sha256.txt.sig"] =
                    to_bytes(office_key("somebody").sign(as_bytes("other words"), kPacketNamespace));
            });
        case 16:
            return in_folder("no signature", "tagmanifest-sha256.txt.sig", m,
                             [](auto& files) { files.erase("tagmanifest-sha256.txt.sig"); });
        case 17:
            return in_folder("signature for another use", "made for another purpose", m, [&](auto& files) {
                files["tagmanifest-sha256.txt.sig"] =
                    to_bytes(office_key("somebody").sign(files["tagmanifest-sha256.txt"], "file"));
            });
        case 18:
            return in_folder("table changed", "data/readings.csv", m,
                             [](auto& files) { files["data/readings.csv"].back() ^= 1; });
        default:
            return sealed("no picture", "this is not a photo", m,
                          [](PacketParts& p) { p.photos.begin()->second = to_bytes("this is no picture"); });
    }
}

BadPacket bad_job(int kind, const Material& m) {
    switch (kind) {
        case 20:
            return sealed("photos swapped", "not the picture that job.json says", m, [](PacketParts& p) {
                std::swap(p.photos.begin()->second, std::prev(p.photos.end())->second);
            });
        case 21:
            return with_json("word not known", "is not one of the words", m, "\"stage\": \"before\"",
                             "\"stage\": \"between\"");
        case 22:
            return with_json("another revision", "another revision", m, "\"revision\": 1", "\"revision\": 4");
        case 23:
            return with_json("from the future", "version 2.0", m, "\"version\": \"1.1\"", "\"version\": \"2.0\"");
        default:
            return with_json("not UTF-8", "not UTF-8", m, "wheel nuts", "wheel n\xff\xfets");
    }
}

}  // namespace

BadPacket bad_packet(int kind, int number, const OfficeShape& shape, const PhotoMaker& photos) {
    const Material m{number, shape, photos};
    if (kind < 12) return bad_archive(kind, m);
    return kind < 20 ? bad_bag(kind, m) : bad_job(kind, m);
}

}  // namespace cotter::test
