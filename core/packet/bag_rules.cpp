// RFC 8493's rules for a complete and valid bag, and the older ones of 0.97 where they differ.
#include <algorithm>
#include <set>
#include <unordered_map>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/packet/check_parts.h"
#include "core/packet/path_rules.h"
#include "core/packet/unicode.h"

namespace cotter {

namespace {

constexpr std::uint64_t kLargestTagFile = 64u << 20;

// ---- reading the tag files

class TagReader {
public:
    TagReader(const BagSource& bag, TagFiles& tags, Reasons& reasons) : bag_(bag), tags_(tags), reasons_(reasons) {}

    bool run() {
        if (!read_declaration()) return false;
        read_info();
        for (std::size_t i = 0; i < bag_.files().size(); ++i) read_manifest(i);
        check_fetch();
        const auto& manifests = tags_.manifests;
        if (std::any_of(manifests.begin(), manifests.end(), [](const Manifest& m) { return !m.tags; })) return true;
        reasons_.add(Weight::error, "", "the bag has no payload manifest that can be checked");
        return false;
    }

private:
    // The bytes of a tag file, held from now on; nullptr when it is absent or unreadable, which is said.
    const Bytes* hold(const std::string& path) {
        const auto file = bag_.find(path);
        if (!file) return nullptr;
        auto bytes = read_whole(bag_, *file, kLargestTagFile);
        if (bytes) return &(tags_.held[*file] = std::move(*bytes));
        reasons_.add(Weight::error, path, bytes.error());
        return nullptr;
    }

    std::optional<std::string> text(const std::string& path) {
        const Bytes* bytes = hold(path);
        if (bytes == nullptr) return std::nullopt;
        bool marked = false;
        auto text = tag_text(*bytes, tags_.declaration.encoding, marked);
        if (marked)
            reasons_.add(Weight::warning, path, "it begins with a byte order mark, which does not belong there");
        if (text) return std::move(*text);
        reasons_.add(Weight::error, path, text.error());
        return std::nullopt;
    }

    bool read_declaration() {
        const std::string path = "bagit.txt";
        if (!bag_.find(path)) return reasons_.add(Weight::error, path, "this is not a bag: the file is missing"), false;
        const Bytes* bytes = hold(path);
        if (bytes == nullptr) return false;
        const auto declaration = parse_bagit_txt(as_text(*bytes));
        if (!declaration) return reasons_.add(Weight::error, path, declaration.error()), false;
        tags_.declaration = *declaration;
        if (declaration->encoding == TagEncoding::latin1)
            reasons_.add(Weight::warning, path, "its tag files are in ISO-8859-1; the standard asks for UTF-8");
        return true;
    }

    void read_info() {
        const auto content = text("bag-info.txt");
        if (!content) return;
        auto info = parse_bag_info(*content);
        if (info)
            tags_.info = std::move(*info);
        else
            reasons_.add(Weight::error, "bag-info.txt", info.error());
    }

    void read_manifest(std::size_t file) {
        const std::string& path = bag_.files()[file].path;
        const auto name = path.find('/') == std::string::npos ? manifest_name(path) : std::nullopt;
        if (!name) return;
        if (!name->kind) {
            const std::string algorithm = one_line(name->algorithm, 30);
            return reasons_.add(Weight::warning, path,
                                fmt::format("its algorithm '{}' is not known, so it was not checked", algorithm));
        }
        const auto content = text(path);
        if (!content) return;
        auto manifest = parse_manifest(*content, path, *name, tags_.declaration.version);
        if (!manifest) return reasons_.add(Weight::error, path, manifest.error());
        for (const std::string& remark : manifest->remarks) reasons_.add(Weight::warning, path, remark);
        if (name->kind == HashKind::md5 || name->kind == HashKind::sha1)
            reasons_.add(Weight::warning, path, fmt::format("{} shows accidents, not intent", hash_name(*name->kind)));
        tags_.manifests.push_back(std::move(*manifest));
    }

    void check_fetch() {
        const auto content = text("fetch.txt");
        if (!content) return;
        const auto paths = parse_fetch(*content, tags_.declaration.version);
        if (!paths) return reasons_.add(Weight::error, "fetch.txt", paths.error());
        for (const std::string& path : *paths)
            if (!bag_.find(path))
                return reasons_.add(
                    Weight::error, "fetch.txt",
                    fmt::format("the bag is incomplete: {} would have to be fetched from elsewhere", one_line(path)));
        reasons_.add(Weight::warning, "fetch.txt", "the bag lists files to fetch; they are all here");
    }

    const BagSource& bag_;
    TagFiles& tags_;
    Reasons& reasons_;
};

// ---- what manifests list against what is there

// The file that a manifest line means. Some writers leave '%' as it is or compose accents otherwise than the disk does;
// where only one file can be meant, it is found, with a remark.
class Lookup {
public:
    explicit Lookup(const BagSource& bag) : bag_(bag) {}

    std::optional<std::size_t> find(const ManifestLine& line, const char*& remark) {
        remark = nullptr;
        if (const auto file = bag_.find(line.path)) return file;
        if (const auto file = bag_.find(line.raw)) {
            remark = "the manifest writes its '%' as it is, which since BagIt 1.0 is to be encoded";
            return file;
        }
        if (composed_.empty())
            for (std::size_t i = 0; i < bag_.files().size(); ++i) composed_.emplace(composed(bag_.files()[i].path), i);
        const auto it = composed_.find(composed(line.path));
        if (it == composed_.end()) return std::nullopt;
        remark = "the manifest spells its accents otherwise than the file's name does (Unicode normalisation)";
        return it->second;
    }

private:
    const BagSource& bag_;
    std::unordered_map<std::string, std::size_t> composed_;
};

class Completeness {
public:
    Completeness(const BagSource& bag, const TagFiles& tags, bool ours, Reasons& reasons)
        : bag_(bag), tags_(tags), ours_(ours), reasons_(reasons), lookup_(bag), in_any_(bag.files().size()) {}

    void run() {
        if (!bag_.has_payload_folder()) reasons_.add(Weight::error, "data", "the bag has no payload folder");
        for (const Manifest& manifest : tags_.manifests) check(manifest);
        for (std::size_t i = 0; i < bag_.files().size(); ++i) check_file(i);
        check_oxum();
    }

private:
    [[nodiscard]] bool v1() const { return tags_.declaration.version == BagVersion::v1_0; }
    // What 1.0 forbids and 0.97 advises against.
    [[nodiscard]] Weight since_v1() const { return v1() ? Weight::error : Weight::warning; }

    void check(const Manifest& manifest) {
        std::vector<bool> listed(bag_.files().size());
        for (const ManifestLine& line : manifest.lines) check_line(manifest, line, listed);
        for (std::size_t i = 0; i < listed.size(); ++i) in_any_[i] = in_any_[i] || listed[i];
        if (manifest.tags)
            check_covers_manifests(manifest, listed);
        else if (v1())
            check_covers_payload(manifest, listed);
    }

    void check_line(const Manifest& manifest, const ManifestLine& line, std::vector<bool>& listed) {
        const std::string path = one_line(line.path);
        if (line.path.starts_with("data/") == manifest.tags)
            return reasons_.add(Weight::error, manifest.file,
                                fmt::format("{} does not belong into this manifest", path));
        if (manifest.tags && line.path.starts_with("tagmanifest-"))
            reasons_.add(since_v1(), manifest.file, fmt::format("{} may not be listed in a tag manifest", path));
        const char* remark = nullptr;
        const auto file = lookup_.find(line, remark);
        if (!file)
            return reasons_.add(Weight::error, line.path,
                                fmt::format("the file is missing; {} lists it", manifest.file));
        if (remark != nullptr) reasons_.add(Weight::warning, line.path, remark);
        if (listed[*file]) reasons_.add(since_v1(), manifest.file, fmt::format("{} is listed twice", path));
        listed[*file] = true;
    }

    // 1.0: each payload manifest lists every payload file.
    void check_covers_payload(const Manifest& manifest, const std::vector<bool>& listed) {
        for (std::size_t i = 0; i < listed.size(); ++i)
            if (bag_.files()[i].payload() && !listed[i])
                reasons_.add(Weight::error, bag_.files()[i].path,
                             fmt::format("the file is in the bag but not in {}", manifest.file));
    }

    void check_covers_manifests(const Manifest& manifest, const std::vector<bool>& listed) {
        for (const Manifest& other : tags_.manifests)
            if (const auto file = bag_.find(other.file); !other.tags && file && !listed[*file])
                reasons_.add(since_v1(), other.file, fmt::format("{} does not list this manifest", manifest.file));
    }

    // 0.97: each payload file is in at least one manifest.
    void check_file(std::size_t i) {
        const BagFile& file = bag_.files()[i];
        if (const std::string odd = unportable_path(file.path); !odd.empty())
            reasons_.add(Weight::warning, file.path, odd);
        if (in_any_[i]) return;
        if (file.payload()) {
            if (!v1()) reasons_.add(Weight::error, file.path, "the file is in the bag but in none of its manifests");
            return;
        }
        const auto has_tags = [](const Manifest& m) { return m.tags; };
        const bool expected = std::any_of(tags_.manifests.begin(), tags_.manifests.end(), has_tags);
        if (expected && !ours_ && !file.path.starts_with("tagmanifest-"))
            reasons_.add(Weight::warning, file.path,
                         "no tag manifest lists this file, so changes to it would not show");
    }

    void check_oxum() {
        const std::string* oxum = value_of(tags_.info, "Payload-Oxum");
        if (oxum == nullptr) return;
        std::uint64_t bytes = 0;
        std::size_t count = 0;
        for (const BagFile& file : bag_.files()) {
            if (!file.payload()) continue;
            bytes += file.size;
            ++count;
        }
        if (*oxum != fmt::format("{}.{}", bytes, count))
            reasons_.add(Weight::error, "bag-info.txt",
                         fmt::format("Payload-Oxum says {}, the payload has {}.{}", one_line(*oxum, 40), bytes, count));
    }

    const BagSource& bag_;
    const TagFiles& tags_;
    bool ours_;
    Reasons& reasons_;
    Lookup lookup_;
    std::vector<bool> in_any_;
};

}  // namespace

const Bytes* TagFiles::bytes_of(const BagSource& bag, std::string_view path) const {
    const auto file = bag.find(std::string(path));
    const auto it = file ? held.find(*file) : held.end();
    return it == held.end() ? nullptr : &it->second;
}

bool read_tag_files(const BagSource& bag, TagFiles& tags, Reasons& reasons) {
    return TagReader(bag, tags, reasons).run();
}

void check_complete(const BagSource& bag, const TagFiles& tags, bool ours, Reasons& reasons) {
    Completeness(bag, tags, ours, reasons).run();
}

void check_digests(const BagSource& bag, const TagFiles& tags, const std::vector<FileFacts>& facts, Reasons& reasons) {
    for (std::size_t i = 0; i < facts.size(); ++i)
        if (facts[i].unreadable) reasons.add(Weight::error, bag.files()[i].path, *facts[i].unreadable);
    Lookup lookup(bag);
    for (const Manifest& manifest : tags.manifests)
        for (const ManifestLine& line : manifest.lines) {
            const char* remark = nullptr;
            const auto file = lookup.find(line, remark);
            if (!file || facts[*file].unreadable || facts[*file].digests.at(manifest.kind) == line.digest) continue;
            reasons.add(Weight::error, bag.files()[*file].path,
                        fmt::format("the file has been changed: its {} is not the one in {}", hash_name(manifest.kind),
                                    manifest.file));
        }
}

}  // namespace cotter
