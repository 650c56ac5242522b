// The box by hand, for scripts that hold it against other programs: keys, signatures, sealing, checking.
// Prints one fact a line; exit codes 0 done, 1 refused or failed, 2 wrong use.
#include <cstdio>
#include <string>
#include <vector>

#include "core/packet/check.h"
#include "core/packet/seal.h"
#include "platform/desktop/ports.h"

namespace cotter {

namespace {

constexpr std::uint64_t kLargest = std::uint64_t{1} << 30;

struct Tool {
    std::unique_ptr<Files> files = make_system_files();
    std::unique_ptr<Random> random = make_system_random();
    std::unique_ptr<Workers> workers = make_thread_workers();

    // key FILE COMMENT: the key there, made when there is none.
    Result<> key(const std::string& path, const std::string& comment) {
        COTTER_ASSIGN(const DeviceKey key, DeviceKey::load_or_make(*files, *random, path, comment));
        std::printf("%s\n%s\n", key.public_line().c_str(), key.fingerprint().c_str());
        return {};
    }

    // sign KEY NAMESPACE FILE: the signature, on standard output.
    Result<> sign(const std::string& key_path, const std::string& name_space, const std::string& path) {
        COTTER_ASSIGN(const DeviceKey key, DeviceKey::load_or_make(*files, *random, key_path, ""));
        COTTER_ASSIGN(const Bytes message, read_file(*files, path, kLargest));
        std::fputs(key.sign(message, name_space).c_str(), stdout);
        return {};
    }

    // verify SIGNATURE NAMESPACE FILE: who signed it.
    Result<> verify(const std::string& signature_path, const std::string& name_space, const std::string& path) {
        COTTER_ASSIGN(const Bytes signature, read_file(*files, signature_path, kLargest));
        COTTER_ASSIGN(const Bytes message, read_file(*files, path, kLargest));
        COTTER_ASSIGN(const SignedBy by, verify_signature(as_text(signature), message, name_space));
        std::printf("%s\n%s\n", by.public_key.c_str(), by.fingerprint.c_str());
        return {};
    }

    // seal OUT KEY FILE…: a packet of these files and a job document of no job, under OUT's name.
    Result<> seal(const std::string& out_path, const std::string& key_path, const std::vector<std::string>& paths) {
        COTTER_ASSIGN(const DeviceKey key, DeviceKey::load_or_make(*files, *random, key_path, ""));
        PacketFace face;
        face.name = base_name(out_path).substr(0, base_name(out_path).rfind('.'));
        face.at = Instant::parse("2026-05-14T16:40:12-05:00").value();
        face.job = "3f9c1a2b-0000-4000-8000-000000000001";
        face.software = "Cotter 0.1.0";
        COTTER_ASSIGN(const auto out, files->create(out_path));
        Sealer sealer(*out, std::move(face), key);
        COTTER_TRY(sealer.add(SealedFile::make("job.json", to_bytes("{}\n"))));
        for (const std::string& path : paths) {
            COTTER_ASSIGN(Bytes bytes, read_file(*files, path, kLargest));
            COTTER_TRY(sealer.add(SealedFile::make("photos/" + base_name(path), std::move(bytes))));
        }
        COTTER_TRY(sealer.finish());
        COTTER_TRY(out->sync());
        return out->close();
    }

    // check PATH: verdict, then the reasons. Fails when it is invalid.
    Result<> check_one(const std::string& path) {
        const CheckReport report = check(*files, *workers, path, {});
        std::printf("%s\n", std::string(name_of(report.verdict)).c_str());
        for (const Reason& reason : report.reasons)
            std::printf("%s: %s: %s\n", std::string(name_of(reason.weight)).c_str(), reason.where.c_str(),
                        reason.what.c_str());
        if (report.verdict == Verdict::invalid) return fail(Errc::refused, "the packet is not valid", path);
        return {};
    }
};

int run(std::vector<std::string> args) {
    Tool tool;
    const std::string verb = args.empty() ? "" : args[0];
    Result<> done;
    if (verb == "key" && args.size() == 3)
        done = tool.key(args[1], args[2]);
    else if (verb == "sign" && args.size() == 4)
        done = tool.sign(args[1], args[2], args[3]);
    else if (verb == "verify" && args.size() == 4)
        done = tool.verify(args[1], args[2], args[3]);
    else if (verb == "seal" && args.size() > 3)
        done = tool.seal(args[1], args[2], {args.begin() + 3, args.end()});
    else if (verb == "check" && args.size() == 2)
        done = tool.check_one(args[1]);
    else
        return std::fputs("use: box_tool key|sign|verify|seal|check …, see its source\n", stderr), 2;
    if (done) return 0;
    std::fprintf(stderr, "%s\n", done.error().line().c_str());
    return 1;
}

}  // namespace

}  // namespace cotter

int main(int argc, char** argv) {
    return cotter::run({argv + 1, argv + argc});
}
