// Method: structure first (open_bag), then the tag files, then one parallel pass that reads every file once, giving its
// digests and, for pictures, the image check; then everything listed is compared with everything there.
#include "core/packet/check.h"

#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/packet/bag.h"
#include "core/packet/check_ours.h"

namespace cotter {

namespace {

constexpr std::uint64_t kLargestTagFile = 64u << 20;
constexpr std::uint64_t kLargestPicture = 128u << 20;

bool is_picture(std::string_view path) {
    const std::string lower = ascii_lower(path);
    return lower.ends_with(".jpg") || lower.ends_with(".jpeg") || lower.ends_with(".png");
}

// What was found out about one file in the one pass over it.
struct FileResult {
    std::map<HashKind, std::string> digests;
    std::optional<Error> unreadable;
    std::optional<Error> bad_picture;
};

class Checker {
public:
    Checker(const BagSource& bag, Workers& workers, const CheckHooks& hooks, CheckReport& report)
        : bag_(bag), workers_(workers), hooks_(hooks), report_(report) {
        for (std::size_t i = 0; i < bag.files().size(); ++i) index_[bag.files()[i].path] = i;
    }

    void run() {
        if (!read_tag_files()) return;
        read_all_files();
        for (const Manifest& manifest : manifests_) compare(manifest);
        check_listed();
        check_oxum();
        if (report_.ours) check_our_packet(bag_, info_, report_);
    }

private:
    void say(Weight weight, std::string where, std::string what) {
        report_.reasons.push_back({weight, one_line(where), std::move(what)});
    }
    void say(const Error& error, std::string where) { say(Weight::error, std::move(where), error.line()); }

    std::optional<Bytes> tag_file(const std::string& path) {
        const auto it = index_.find(path);
        if (it == index_.end()) return std::nullopt;
        auto bytes = read_whole(bag_, it->second, kLargestTagFile);
        if (bytes) return std::move(*bytes);
        say(bytes.error(), path);
        return std::nullopt;
    }

    bool read_tag_files() {
        const auto bagit = tag_file("bagit.txt");
        if (!bagit) return say(Weight::error, "bagit.txt", "this is not a bag: the file is missing or unreadable"), false;
        const auto version = parse_bagit_txt(as_text(*bagit));
        if (!version) return say(version.error(), ""), false;
        version_ = *version;
        report_.bag_version = version_ == BagVersion::v1_0 ? "1.0" : "0.97";
        read_info();
        if (index_.contains("fetch.txt"))
            say(Weight::error, "fetch.txt", "the bag is incomplete: parts of it would have to be fetched from elsewhere");
        for (const BagFile& file : bag_.files()) read_manifest(file.path);
        if (std::none_of(manifests_.begin(), manifests_.end(), [](const Manifest& m) { return !m.tags; })) {
            say(Weight::error, "", "the bag has no payload manifest that can be checked");
            return false;
        }
        return true;
    }

    void read_info() {
        const auto text = tag_file("bag-info.txt");
        if (!text) return;
        auto info = parse_bag_info(as_text(*text));
        if (!info) return say(Weight::error, "bag-info.txt", info.error().line());
        info_ = std::move(*info);
        const std::string* agent = value_of(info_, "Bag-Software-Agent");
        report_.ours = (agent != nullptr && agent->starts_with("Cotter ")) || index_.contains(std::string(kSignatureFile));
    }

    void read_manifest(const std::string& path) {
        const auto name = path.find('/') == std::string::npos ? manifest_name(path) : std::nullopt;
        if (!name) return;
        if (!name->kind)
            return say(Weight::warning, path, fmt::format("its algorithm '{}' is not known, so it was not checked",
                                                          one_line(name->algorithm, 30)));
        const auto text = tag_file(path);
        if (!text) return;
        auto manifest = parse_manifest(as_text(*text), path, *name, version_);
        if (!manifest) return say(manifest.error(), "");
        for (const std::string& remark : manifest->remarks) say(Weight::warning, path, remark);
        if (name->kind == HashKind::md5 || name->kind == HashKind::sha1)
            say(Weight::warning, path, fmt::format("{} shows accidents, not intent", hash_name(*name->kind)));
        const std::string algorithm(hash_name(manifest->kind));
        if (std::find(report_.algorithms.begin(), report_.algorithms.end(), algorithm) == report_.algorithms.end())
            report_.algorithms.push_back(algorithm);
        manifests_.push_back(std::move(*manifest));
    }

    // One read of each file, on as many threads as there are; the largest first, so that no thread idles at the end.
    void read_all_files() {
        std::vector<std::size_t> order(bag_.files().size());
        for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
        std::sort(order.begin(), order.end(), [&](auto a, auto b) { return bag_.files()[a].size > bag_.files()[b].size; });
        std::set<HashKind> kinds;
        for (const Manifest& manifest : manifests_) kinds.insert(manifest.kind);
        results_.resize(order.size());
        workers_.run(order.size(), [&](std::size_t i) { results_[order[i]] = read_one(order[i], kinds); });
        for (std::size_t i = 0; i < results_.size(); ++i) {
            const std::string& path = bag_.files()[i].path;
            if (path.starts_with("data/")) {
                ++report_.files;
                report_.bytes += bag_.files()[i].size;
            }
            if (results_[i].unreadable) say(*results_[i].unreadable, path);
            if (results_[i].bad_picture)
                say(report_.ours ? Weight::error : Weight::warning, path, results_[i].bad_picture->line());
        }
    }

    FileResult read_one(std::size_t file, const std::set<HashKind>& kinds) const {
        const BagFile& f = bag_.files()[file];
        FileResult result;
        std::vector<std::pair<HashKind, Hasher>> hashers;
        for (const HashKind kind : kinds) hashers.emplace_back(kind, Hasher(kind));
        const bool keep = hooks_.image && f.path.starts_with("data/") && is_picture(f.path) && f.size <= kLargestPicture;
        Bytes kept;
        if (keep) kept.reserve(static_cast<std::size_t>(f.size));
        const auto done = bag_.read(file, [&](ByteView piece) {
            for (auto& [kind, hasher] : hashers) hasher.add(piece);
            if (keep) kept.insert(kept.end(), piece.begin(), piece.end());
        });
        if (!done) {
            result.unreadable = done.error();
            return result;
        }
        for (auto& [kind, hasher] : hashers) result.digests[kind] = hasher.finish_hex();
        if (keep)
            if (const auto good = hooks_.image(f.path, kept); !good) result.bad_picture = good.error();
        return result;
    }

    void compare(const Manifest& manifest) {
        std::set<std::string> seen;
        for (const ManifestLine& line : manifest.lines) {
            const bool payload = line.path.starts_with("data/");
            if (payload == manifest.tags)
                say(Weight::error, manifest.file, fmt::format("{} does not belong into this manifest", one_line(line.path)));
            if (!seen.insert(line.path).second)
                say(Weight::error, manifest.file, fmt::format("{} is listed twice", one_line(line.path)));
            const auto it = index_.find(line.path);
            if (it == index_.end()) {
                say(Weight::error, line.path, fmt::format("the file is missing; {} lists it", manifest.file));
                continue;
            }
            const FileResult& result = results_[it->second];
            if (!result.unreadable && result.digests.at(manifest.kind) != line.digest)
                say(Weight::error, line.path, fmt::format("the file has been changed: its {} is not the one in {}",
                                                          hash_name(manifest.kind), manifest.file));
        }
        (manifest.tags ? listed_tags_ : listed_.emplace_back()).merge(seen);
    }

    // 1.0: each payload manifest lists every payload file. 0.97: each payload file is in at least one.
    void check_listed() {
        for (const BagFile& file : bag_.files()) {
            const bool payload = file.path.starts_with("data/");
            const auto has = [&](const auto& set) { return set.contains(file.path); };
            const bool listed = version_ == BagVersion::v1_0 ? std::all_of(listed_.begin(), listed_.end(), has)
                                                             : std::any_of(listed_.begin(), listed_.end(), has);
            if (payload && !listed) say(Weight::error, file.path, "the file is in the bag but not in its manifests");
            const bool need_not = file.path.starts_with("tagmanifest-");
            if (!payload && !need_not && !listed_tags_.contains(file.path) && report_.ours)
                say(Weight::error, file.path, "the file is not covered by the signed list");
        }
    }

    void check_oxum() {
        const std::string* oxum = value_of(info_, "Payload-Oxum");
        if (oxum == nullptr) return;
        if (*oxum != fmt::format("{}.{}", report_.bytes, report_.files))
            say(Weight::error, "bag-info.txt", fmt::format("Payload-Oxum says {}, the payload has {}.{}",
                                                           one_line(*oxum, 40), report_.bytes, report_.files));
    }

    const BagSource& bag_;
    Workers& workers_;
    const CheckHooks& hooks_;
    CheckReport& report_;
    std::map<std::string, std::size_t> index_;
    BagVersion version_ = BagVersion::v1_0;
    BagInfo info_;
    std::vector<Manifest> manifests_;
    std::vector<FileResult> results_;
    std::vector<std::set<std::string>> listed_;  // one set a payload manifest
    std::set<std::string> listed_tags_;
};

Verdict verdict_of(const std::vector<Reason>& reasons) {
    Verdict verdict = Verdict::valid;
    for (const Reason& reason : reasons) {
        if (reason.weight == Weight::error) return Verdict::invalid;
        if (reason.weight == Weight::warning) verdict = Verdict::valid_with_warnings;
    }
    return verdict;
}

}  // namespace

CheckReport check(Files& files, Workers& workers, const std::string& path, const CheckHooks& hooks,
                  const ZipLimits& limits) {
    CheckReport report;
    const auto bag = open_bag(files, path, limits);
    if (!bag) {
        report.reasons.push_back({Weight::error, bag.error().where, bag.error().what});
        return report;
    }
    Checker(**bag, workers, hooks, report).run();
    report.verdict = verdict_of(report.reasons);
    return report;
}

}  // namespace cotter
