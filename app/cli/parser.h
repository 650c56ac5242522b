// How the commands say which options they take. CLI11 reads the command line; parser.cpp alone includes it, because
// compiling it costs seconds in each file. One thread.
#pragma once

#include <cstddef>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace cotter::cli {

// One option of a command, to say more about it. Lives as long as the CommandLine.
class Option {
public:
    explicit Option(CLI::Option* inner) : inner_(inner) {}

    Option& required();
    Option& needs(const Option& other);        // may be given only together with `other`
    Option& expects(int count);                // of a list: exactly so many words
    Option& between(int least, int greatest);  // of a number: both included

private:
    CLI::Option* inner_;
};

// One command of the program. What an option fills outlives parsing; it keeps its value when the option is not given.
class Parser {
public:
    explicit Parser(CLI::App* inner) : inner_(inner) {}

    // A name without dashes takes its word by position. `help` is the line that --help prints.
    Option add_option(const std::string& name, std::string& to, const std::string& help);
    Option add_option(const std::string& name, std::vector<std::string>& to, const std::string& help);
    Option add_option(const std::string& name, int& to, const std::string& help);
    Option add_option(const std::string& name, std::size_t& to, const std::string& help);
    Option add_option(const std::string& name, float& to, const std::string& help);
    Option add_flag(const std::string& name, bool& to, const std::string& help);

    // One word, in either case, of `words`.
    template <class E>
    Option add_choice(const std::string& name, E& to, const std::map<std::string, E>& words, const std::string& help) {
        const auto set = [&to](const std::vector<int>& chosen) { to = static_cast<E>(chosen.front()); };
        return add_choice_of(name, numbers_of(words), set, help);
    }
    // Any number of `words`, as they are written.
    template <class E>
    Option add_choices(const std::string& name, std::vector<E>& to, const std::map<std::string, E>& words,
                       const std::string& help) {
        const auto set = [&to](const std::vector<int>& chosen) {
            to.clear();
            for (const int one : chosen) to.push_back(static_cast<E>(one));
        };
        return add_choices_of(name, numbers_of(words), set, help);
    }

    void take_any();  // whatever follows the command is taken and let go

    [[nodiscard]] bool given() const;  // after parsing: the command line named this command

private:
    using Words = std::map<std::string, int>;
    using SetChosen = std::function<void(const std::vector<int>&)>;
    Option add_choice_of(const std::string& name, const Words& words, SetChosen set, const std::string& help);
    Option add_choices_of(const std::string& name, const Words& words, SetChosen set, const std::string& help);

    template <class E>
    static Words numbers_of(const std::map<std::string, E>& words) {
        static_assert(std::is_same_v<std::underlying_type_t<E>, int>);
        Words numbers;
        for (const auto& [word, value] : words) numbers.emplace(word, static_cast<int>(value));
        return numbers;
    }

    CLI::App* inner_;
};

// The whole command line: `cotter COMMAND …`.
class CommandLine {
public:
    // `version`: what --version prints.
    CommandLine(const std::string& description, const std::string& version);
    ~CommandLine();
    CommandLine(const CommandLine&) = delete;
    CommandLine& operator=(const CommandLine&) = delete;

    Parser add_command(const std::string& name, const std::string& help);

    // `words`: without the program's name. Nothing when a command may run; else help, version or what is wrong was
    // printed, and this is the exit code to end with: 0 or `wrong_use`.
    [[nodiscard]] std::optional<int> parse(std::vector<std::string> words, int wrong_use);

private:
    std::unique_ptr<CLI::App> inner_;
};

}  // namespace cotter::cli
