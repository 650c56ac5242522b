// The shim VFS. The callbacks have C signatures because SQLite calls them.
#include "tests/support/fault_vfs.h"

#include <cstring>
#include <random>
#include <sqlite3.h>
#include <vector>

namespace cotter::test {

namespace {

constexpr std::size_t kSector = 512;

// A write since the last sync; without bytes it is a truncation to `at`.
struct Pending {
    std::size_t at = 0;
    Bytes bytes;
    bool truncates = false;
};

struct Tracked {
    Bytes durable;
    bool on_disk = false;  // its name has reached the disk
    bool deleted = false;  // taken away, but the folder is not synced yet
    std::vector<Pending> pending;
};

void write_into(Bytes& file, std::size_t at, ByteView bytes) {
    if (file.size() < at + bytes.size()) file.resize(at + bytes.size());
    std::copy(bytes.begin(), bytes.end(), file.begin() + static_cast<std::ptrdiff_t>(at));
}

void apply_all(Bytes& file, const std::vector<Pending>& pending) {
    for (const Pending& p : pending) p.truncates ? file.resize(p.at) : write_into(file, p.at, p.bytes);
}

// Each sector of each write by the toss of a coin.
void apply_some(Bytes& file, const std::vector<Pending>& pending, std::mt19937& coin) {
    for (const Pending& p : pending) {
        if (p.truncates && coin() % 2 == 0) file.resize(p.at);
        for (std::size_t from = 0; from < p.bytes.size();) {
            const std::size_t end = std::min(p.bytes.size(), from + kSector - (p.at + from) % kSector);
            if (coin() % 2 == 0) write_into(file, p.at + from, ByteView(p.bytes).subspan(from, end - from));
            from = end;
        }
    }
}

std::string base(const char* path) {
    const char* slash = std::strrchr(path, '/');
    return slash == nullptr ? path : slash + 1;
}

}  // namespace

struct FaultVfs::State {
    sqlite3_vfs* real = nullptr;
    sqlite3_vfs own{};
    std::string name;
    int until = 0;  // counted calls until one fails; 0: none will
    Kind kind = Kind::io;
    Mode mode = Mode::once;
    int failures = 0;
    int syncs = 0;
    std::map<std::string, Tracked> files;
    std::function<void()> at_sync;

    // True: this call fails.
    bool strikes(bool needs_space) {
        if (until == 0 || (kind == Kind::full && !needs_space)) return false;
        if (--until > 0) return false;
        until = mode == Mode::once ? 0 : 1;
        ++failures;
        return true;
    }
    [[nodiscard]] int code(int io_code) const { return kind == Kind::full ? SQLITE_FULL : io_code; }
    void tell() {
        if (at_sync) at_sync();
    }
};

namespace {

using State = FaultVfs::State;

struct ShimFile {
    sqlite3_file head;
    State* state;
    Tracked* tracked;  // nothing for temporary files
    [[nodiscard]] sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

ShimFile& shim(sqlite3_file* file) {
    return *reinterpret_cast<ShimFile*>(file);
}

State& state_of(sqlite3_vfs* vfs) {
    return *static_cast<State*>(vfs->pAppData);
}

int close_file(sqlite3_file* file) {
    sqlite3_file* real = shim(file).real();
    return real->pMethods == nullptr ? SQLITE_OK : real->pMethods->xClose(real);
}

int read(sqlite3_file* file, void* out, int size, sqlite3_int64 at) {
    ShimFile& s = shim(file);
    if (s.state->strikes(false)) return SQLITE_IOERR_READ;
    return s.real()->pMethods->xRead(s.real(), out, size, at);
}

int write(sqlite3_file* file, const void* bytes, int size, sqlite3_int64 at) {
    ShimFile& s = shim(file);
    const bool fails = s.state->strikes(true);
    const int written = fails ? size / 2 : size;
    const auto* begin = static_cast<const std::uint8_t*>(bytes);
    if (s.tracked != nullptr)
        s.tracked->pending.push_back({static_cast<std::size_t>(at), Bytes(begin, begin + written), false});
    const int done = s.real()->pMethods->xWrite(s.real(), bytes, written, at);
    return fails ? s.state->code(SQLITE_IOERR_WRITE) : done;
}

int truncate(sqlite3_file* file, sqlite3_int64 size) {
    ShimFile& s = shim(file);
    if (s.state->strikes(false)) return SQLITE_IOERR_TRUNCATE;
    if (s.tracked != nullptr) s.tracked->pending.push_back({static_cast<std::size_t>(size), {}, true});
    return s.real()->pMethods->xTruncate(s.real(), size);
}

int sync(sqlite3_file* file, int) {
    ShimFile& s = shim(file);
    ++s.state->syncs;
    s.state->tell();
    if (s.state->strikes(true)) return s.state->code(SQLITE_IOERR_FSYNC);
    if (s.tracked != nullptr) {
        apply_all(s.tracked->durable, s.tracked->pending);
        s.tracked->pending.clear();
        s.tracked->on_disk = true;
    }
    s.state->tell();
    return SQLITE_OK;
}

int file_size(sqlite3_file* file, sqlite3_int64* out) {
    return shim(file).real()->pMethods->xFileSize(shim(file).real(), out);
}
int lock(sqlite3_file* file, int level) {
    return shim(file).real()->pMethods->xLock(shim(file).real(), level);
}
int unlock(sqlite3_file* file, int level) {
    return shim(file).real()->pMethods->xUnlock(shim(file).real(), level);
}
int check_reserved(sqlite3_file* file, int* out) {
    return shim(file).real()->pMethods->xCheckReservedLock(shim(file).real(), out);
}
int control(sqlite3_file* file, int what, void* argument) {
    return shim(file).real()->pMethods->xFileControl(shim(file).real(), what, argument);
}
int sector_size(sqlite3_file*) {
    return kSector;
}
int characteristics(sqlite3_file*) {
    return 0;  // nothing is promised: no atomic writes, no appends in order
}

const sqlite3_io_methods kMethods = {
    1,       close_file,     read,    write,       truncate,        sync,    file_size, lock,
    unlock,  check_reserved, control, sector_size, characteristics, nullptr, nullptr,   nullptr,
    nullptr, nullptr,        nullptr};

Bytes whole(sqlite3_file* file) {
    sqlite3_int64 size = 0;
    file->pMethods->xFileSize(file, &size);
    Bytes out(static_cast<std::size_t>(size));
    if (size > 0) file->pMethods->xRead(file, out.data(), static_cast<int>(size), 0);
    return out;
}

// What lay there before the first opening counts as on the disk.
Tracked* track(State& state, const char* path, bool was_there, sqlite3_file* real) {
    if (path == nullptr) return nullptr;
    const auto [it, is_new] = state.files.try_emplace(base(path));
    if (is_new && was_there) {
        it->second.durable = whole(real);
        it->second.on_disk = true;
    }
    if (!was_there) {
        // Made anew; until it is synced the disk may still hold the one that was deleted.
        if (it->second.deleted) it->second.pending.push_back({0, {}, true});
        it->second.deleted = false;
    }
    return &it->second;
}

int open(sqlite3_vfs* vfs, const char* path, sqlite3_file* file, int flags, int* out_flags) {
    State& state = state_of(vfs);
    ShimFile& s = shim(file);
    s.head.pMethods = nullptr;
    s.state = &state;
    if (state.strikes(true)) return state.code(SQLITE_CANTOPEN);
    int was_there = 0;
    if (path != nullptr) state.real->xAccess(state.real, path, SQLITE_ACCESS_EXISTS, &was_there);
    s.real()->pMethods = nullptr;
    const int done = state.real->xOpen(state.real, path, s.real(), flags, out_flags);
    if (done != SQLITE_OK) return done;
    s.head.pMethods = &kMethods;
    s.tracked = track(state, path, was_there != 0, s.real());
    return SQLITE_OK;
}

int remove(sqlite3_vfs* vfs, const char* path, int sync_folder) {
    State& state = state_of(vfs);
    state.tell();
    if (state.strikes(false)) return SQLITE_IOERR_DELETE;
    const int done = state.real->xDelete(state.real, path, 0);
    if (done == SQLITE_OK) {
        Tracked& tracked = state.files[base(path)];
        tracked.deleted = true;
        if (sync_folder != 0) tracked = Tracked{};
    }
    state.tell();
    return done;
}

int access(sqlite3_vfs* vfs, const char* path, int flags, int* out) {
    return state_of(vfs).real->xAccess(state_of(vfs).real, path, flags, out);
}
int full_path(sqlite3_vfs* vfs, const char* path, int size, char* out) {
    return state_of(vfs).real->xFullPathname(state_of(vfs).real, path, size, out);
}

}  // namespace

FaultVfs::FaultVfs() : state_(std::make_unique<State>()) {
    state_->real = sqlite3_vfs_find(nullptr);
    state_->own = *state_->real;  // randomness, sleep and time stay the real one's
    state_->name = "cotter-fault-" + std::to_string(reinterpret_cast<std::uintptr_t>(this));
    state_->own.szOsFile += static_cast<int>(sizeof(ShimFile));
    state_->own.pNext = nullptr;
    state_->own.zName = state_->name.c_str();
    state_->own.pAppData = state_.get();
    state_->own.xOpen = open;
    state_->own.xDelete = remove;
    state_->own.xAccess = access;
    state_->own.xFullPathname = full_path;
    sqlite3_vfs_register(&state_->own, 0);
}

FaultVfs::~FaultVfs() {
    sqlite3_vfs_unregister(&state_->own);
}

const std::string& FaultVfs::name() const {
    return state_->name;
}

void FaultVfs::fail_call(int n, Kind kind, Mode mode) {
    state_->until = n;
    state_->kind = kind;
    state_->mode = mode;
    state_->failures = 0;
}

void FaultVfs::stop_failing() {
    state_->until = 0;
}

int FaultVfs::failures() const {
    return state_->failures;
}

FaultVfs::Disk FaultVfs::after_power_cut(Cut cut, unsigned seed) const {
    std::mt19937 coin(seed);
    Disk out;
    for (const auto& [name, file] : state_->files) {
        if (cut == Cut::strict ? !file.on_disk : file.deleted) continue;
        Bytes bytes = file.durable;
        if (cut == Cut::written) apply_all(bytes, file.pending);
        if (cut == Cut::torn) apply_some(bytes, file.pending, coin);
        out.emplace(name, std::move(bytes));
    }
    return out;
}

void FaultVfs::watch(std::function<void()> at_sync) {
    state_->at_sync = std::move(at_sync);
}

int FaultVfs::syncs() const {
    return state_->syncs;
}

}  // namespace cotter::test
