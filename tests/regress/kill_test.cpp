// Kills a writing process over and over and looks at what it leaves: kill_test WRITER ROUNDS.
//
// Method: the writer prints the number of each step that the book has confirmed. The test reads some of them, waits a
// random while (fixed seed) and sends SIGKILL, which no program can catch. Then the book must open, verify() must hold,
// and every confirmed step must be in its journal. A killed process leaves what the system holds in memory, so this
// shows that nothing waits inside the program; that syncs are in the right places is shown by the power-cut tests.
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <sys/wait.h>
#include <unistd.h>

#include "core/book/book.h"
#include "platform/desktop/ports.h"
#include "tests/support/temp_folder.h"
#include "tests/regress/kill_job.h"

namespace {

using namespace cotter;

constexpr unsigned kSeed = 20260514;
constexpr int kRoundsPerBook = 10;

struct Tally {
    int rounds = 0;
    std::size_t confirmed = 0;  // steps, over all rounds
    int unconfirmed = 0;        // steps that were on disk although the writer could not say so any more
    int before_first = 0;       // rounds killed before a step was confirmed
    int refused = 0;            // openings refused while the writer was alive
};

[[noreturn]] void fail_test(int round, const std::string& why) {
    std::fprintf(stderr, "kill_test: round %d: %s\n", round, why.c_str());
    std::exit(1);
}

struct Writer {
    pid_t pid = -1;
    int out = -1;
};

Writer start(const char* program, const std::string& folder, const std::string& seed) {
    int ends[2];
    if (::pipe(ends) != 0) std::exit(1);
    const pid_t pid = ::fork();
    if (pid < 0) std::exit(1);
    if (pid == 0) {
        ::dup2(ends[1], STDOUT_FILENO);
        ::close(ends[0]);
        ::close(ends[1]);
        ::execl(program, program, folder.c_str(), seed.c_str(), static_cast<char*>(nullptr));
        ::_exit(127);
    }
    ::close(ends[1]);
    return {pid, ends[0]};
}

// Reads lines until `lines` of them have come or the writer has ended. The last whole line's number; a line that was
// cut off says nothing.
struct Listener {
    int in;
    std::string line;
    std::size_t last = 0;

    void hear(std::size_t lines) {
        char c = 0;
        while (lines > 0 && ::read(in, &c, 1) == 1) {
            if (c != '\n') {
                line += c;
                continue;
            }
            last = std::strtoull(line.c_str(), nullptr, 10);
            line.clear();
            --lines;
        }
    }
};

void check_refused_while_open(Files& files, const std::string& folder, int round, Tally& tally) {
    const auto second = Book::open(files, folder, OpenMode::existing);
    if (second || second.error().code != Errc::busy) fail_test(round, "the book could be opened twice");
    if (!second.error().line().starts_with("the book is in use by another process: "))
        fail_test(round, second.error().line());
    ++tally.refused;
}

// Lets the writer work, kills it, and returns the last step that it confirmed.
std::size_t work_and_kill(const char* program, Files& files, const std::string& folder, int round, std::mt19937& random,
                          Tally& tally) {
    const Writer writer = start(program, folder, std::to_string(kSeed + static_cast<unsigned>(round)));
    Listener listener{writer.out, {}, 0};
    const std::size_t lines = random() % 4 == 0 ? 0 : random() % 30;
    listener.hear(lines);
    if (lines > 0 && round % 5 == 0) check_refused_while_open(files, folder, round, tally);
    ::usleep(static_cast<useconds_t>(random() % 12'000));
    ::kill(writer.pid, SIGKILL);
    listener.hear(SIZE_MAX);
    ::close(writer.out);
    int status = 0;
    ::waitpid(writer.pid, &status, 0);
    if (!WIFSIGNALED(status) || WTERMSIG(status) != SIGKILL) fail_test(round, "the writer ended by itself");
    return listener.last;
}

// Returns how many steps the book holds.
std::size_t check_book(Files& files, const std::string& folder, int round, std::size_t confirmed) {
    const auto book = Book::open(files, folder, OpenMode::create);
    if (!book) fail_test(round, book.error().line());
    if (const auto sound = (*book)->verify(); !sound) fail_test(round, sound.error().line());
    const auto steps = (*book)->journal(test::kill_job());
    if (!steps) fail_test(round, steps.error().line());
    if (steps->size() < confirmed)
        fail_test(round,
                  std::to_string(confirmed) + " steps were confirmed, " + std::to_string(steps->size()) + " are there");
    if (steps->size() > confirmed + 1) fail_test(round, "there are steps that nobody took");
    for (std::size_t i = 0; i < steps->size(); ++i)
        if ((*steps)[i].edit.by != test::kill_person(i + 1))
            fail_test(round, "step " + std::to_string(i + 1) + " is missing");
    return steps->size();
}

Tally run(const char* program, int rounds) {
    const auto files = make_system_files();
    std::mt19937 random(kSeed);
    Tally tally;
    while (tally.rounds < rounds) {
        const test::TempFolder folder;
        std::size_t on_disk = 0;
        for (int i = 0; i < kRoundsPerBook && tally.rounds < rounds; ++i) {
            const int round = ++tally.rounds;
            const std::size_t heard = work_and_kill(program, *files, folder.path(), round, random, tally);
            if (heard == 0) ++tally.before_first;
            const std::size_t confirmed = std::max(heard, on_disk);
            const std::size_t now = check_book(*files, folder.path(), round, confirmed);
            tally.confirmed += confirmed - on_disk;
            tally.unconfirmed += static_cast<int>(now - confirmed);
            on_disk = now;
        }
    }
    return tally;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 3) return 2;
    const Tally t = run(argv[1], std::atoi(argv[2]));
    std::printf(
        "%d kills (%d before the first step), %zu confirmed steps, none missing; %d more were on disk; "
        "%d openings beside a living writer refused\n",
        t.rounds, t.before_first, t.confirmed, t.unconfirmed, t.refused);
    return t.rounds > 0 && t.confirmed > 0 ? 0 : 1;
}
