// Method: structure first (open_bag), then the tag files and all that can be said from names and sizes, then one pass
// over every file on all cores that gives its digests and, for pictures, the image check. The job document comes last.
#include "core/packet/check.h"

#include <algorithm>
#include <mutex>
#include <set>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/packet/check_parts.h"
#include "core/packet/packet_form.h"

namespace cotter {

namespace {

constexpr std::size_t kMostReasons = 200;
constexpr std::uint64_t kLargestText = 64u << 20;
constexpr std::uint64_t kLargestPicture = 128u << 20;

bool is_picture(std::string_view path) {
    const std::string lower = ascii_lower(path);
    return lower.ends_with(".jpg") || lower.ends_with(".jpeg") || lower.ends_with(".png");
}

// Buffers used again: fresh memory for each of many large pictures would cost as much as hashing them. Any thread.
class Spares {
public:
    Bytes take(std::uint64_t size) {
        Bytes out;
        {
            const std::lock_guard lock(mutex_);
            if (!all_.empty()) {
                out = std::move(all_.back());
                all_.pop_back();
            }
        }
        out.resize(static_cast<std::size_t>(size));
        return out;
    }
    void give(Bytes bytes) {
        const std::lock_guard lock(mutex_);
        all_.push_back(std::move(bytes));
    }

private:
    std::mutex mutex_;
    std::vector<Bytes> all_;
};

// The one pass over the files' bytes.
class Pass {
public:
    Pass(const BagSource& bag, const TagFiles& tags, const CheckHooks& hooks, bool ours, bool good)
        : bag_(bag), tags_(tags), ours_(ours), image_(good ? hooks.image : nullptr), kept_(hooks.kept) {
        for (const Manifest& manifest : tags.manifests) {
            kinds_.insert(manifest.kind);
            for (const ManifestLine& line : manifest.lines) expected_[{line.path, manifest.kind}] = line.digest;
        }
    }

    // The largest files first, so that no thread idles at the end.
    std::vector<FileFacts> run(Workers& workers) {
        std::vector<std::size_t> order(bag_.files().size());
        for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
        std::sort(order.begin(), order.end(),
                  [&](auto a, auto b) { return bag_.files()[a].size > bag_.files()[b].size; });
        std::vector<FileFacts> facts(order.size());
        workers.run(order.size(), [&](std::size_t i) { facts[order[i]] = read_one(order[i]); });
        return facts;
    }

private:
    FileFacts read_one(std::size_t file) {
        const BagFile& f = bag_.files()[file];
        FileFacts facts;
        std::vector<std::pair<HashKind, Hasher>> hashers;
        for (const HashKind kind : kinds_) hashers.emplace_back(kind, Hasher(kind));
        const auto add = [&](ByteView piece) {
            for (auto& [kind, hasher] : hashers) hasher.add(piece);
        };
        const auto held = tags_.held.find(file);
        Bytes buffer = held == tags_.held.end() && to_keep(f) ? spares_.take(f.size) : Bytes();
        if (held != tags_.held.end())
            add(held->second);
        else if (auto done = bag_.read(file, add, buffer); !done)
            facts.unreadable = done.error();
        if (facts.unreadable) return facts;
        for (auto& [kind, hasher] : hashers) facts.digests[kind] = hasher.finish_hex();
        if (image_ && f.payload() && is_picture(f.path) && f.size > kLargestPicture)
            facts.bad_picture = Error{Errc::refused, "the picture is larger than allowed", {}, {}};
        if (to_keep(f)) look_closer(file, held == tags_.held.end() ? buffer : held->second, facts);
        if (f.path == packet_form::kJob)
            facts.kept = std::move(buffer);
        else
            spares_.give(std::move(buffer));
        return facts;
    }

    [[nodiscard]] bool to_keep(const BagFile& f) const {
        if (is_picture(f.path)) return image_ && f.payload() && f.size <= kLargestPicture;
        return ours_ && f.size <= kLargestText && packet_form::packing_of(f.path) == Packing::deflate;
    }

    // What is asked of a file whose bytes are all at hand: see to_keep.
    void look_closer(std::size_t file, ByteView bytes, FileFacts& facts) const {
        const BagFile& f = bag_.files()[file];
        if (!is_picture(f.path)) {
            const auto same = bag_.packed_as_ours(file, bytes);
            facts.packed_otherwise = same && !*same;
        } else if (as_listed(f, facts)) {
            auto good = image_(f.path, bytes);
            if (good && ours_ && kept_) good = kept_(f.path, facts.digests[HashKind::sha256], bytes);
            if (!good) facts.bad_picture = good.error();
        }
    }

    [[nodiscard]] bool as_listed(const BagFile& f, const FileFacts& facts) const {
        return std::all_of(facts.digests.begin(), facts.digests.end(), [&](const auto& digest) {
            const auto it = expected_.find({f.path, digest.first});
            return it == expected_.end() || it->second == digest.second;
        });
    }

    const BagSource& bag_;
    const TagFiles& tags_;
    bool ours_;
    std::function<Result<>(const std::string&, ByteView)> image_;
    std::function<Result<>(const std::string&, const std::string&, ByteView)> kept_;
    std::set<HashKind> kinds_;
    std::map<std::pair<std::string, HashKind>, std::string> expected_;
    Spares spares_;
};

void say_facts(const BagSource& bag, const TagFiles& tags, CheckReport& report) {
    report.bag_version = tags.declaration.version == BagVersion::v1_0 ? "1.0" : "0.97";
    for (const Manifest& manifest : tags.manifests) {
        const std::string name(hash_name(manifest.kind));
        auto& all = report.algorithms;
        if (std::find(all.begin(), all.end(), name) == all.end()) all.push_back(name);
    }
    for (const BagFile& file : bag.files()) {
        if (!file.payload()) continue;
        ++report.files;
        report.bytes += file.size;
    }
    if (const Bytes* list = tags.bytes_of(bag, packet_form::kTagManifest))
        report.tagmanifest_sha256 = sha256_hex(*list);
}

void say_closer_looks(const BagSource& bag, const std::vector<FileFacts>& facts, bool ours, Reasons& reasons) {
    for (std::size_t i = 0; i < facts.size(); ++i) {
        const std::string& path = bag.files()[i].path;
        if (facts[i].bad_picture)
            reasons.add(ours ? Weight::error : Weight::warning, path, facts[i].bad_picture->line());
        if (facts[i].packed_otherwise)
            reasons.add(Weight::note, path,
                        "its compressed form is not the one this program writes (another zlib, or changed outside the "
                        "signed bytes); harmless, because what it unpacks to is exactly as signed");
    }
}

void check_bag(const BagSource& bag, Workers& workers, const CheckHooks& hooks, CheckReport& report, Reasons& reasons) {
    TagFiles tags;
    const bool readable = read_tag_files(bag, tags, reasons);
    report.ours = is_ours(bag, tags);
    if (!readable) return;
    say_facts(bag, tags, report);
    check_complete(bag, tags, report.ours, reasons);
    if (report.ours) check_form(bag, tags, report, reasons);
    std::vector<FileFacts> facts = Pass(bag, tags, hooks, report.ours, reasons.good()).run(workers);
    check_digests(bag, tags, facts, reasons);
    say_closer_looks(bag, facts, report.ours, reasons);
    const auto job = bag.find(std::string(packet_form::kJob));
    if (report.ours && job && reasons.good()) check_job(bag, hooks, facts, report, reasons);
}

}  // namespace

void Reasons::add(Weight weight, std::string_view where, std::string what) {
    worst_ = std::max(worst_, weight);
    if (report_.reasons.size() >= kMostReasons)
        ++left_out_;
    else
        report_.reasons.push_back({weight, one_line(where), std::move(what)});
}

void Reasons::add(Weight weight, std::string_view where, const Error& error) {
    const std::string what = error.todo.empty() ? error.what : error.what + "; " + error.todo;
    add(weight, where.empty() || where == error.where ? std::string_view(error.where) : where, what);
}

void Reasons::close() {
    if (left_out_ > 0)
        report_.reasons.push_back({worst_, "", fmt::format("there is more to say of this kind, {} times", left_out_)});
    report_.verdict = worst_ == Weight::error     ? Verdict::invalid
                      : worst_ == Weight::warning ? Verdict::valid_with_warnings
                                                  : Verdict::valid;
}

CheckReport check(Files& files, Workers& workers, const std::string& path, const CheckHooks& hooks,
                  const ZipLimits& limits) {
    CheckReport report;
    Reasons reasons(report);
    const auto bag = open_bag(files, path, limits);
    if (bag)
        check_bag(**bag, workers, hooks, report, reasons);
    else
        reasons.add(Weight::error, "", bag.error());
    reasons.close();
    return report;
}

}  // namespace cotter
