// The only file that includes CLI11.
#include "app/cli/parser.h"

#include <algorithm>

#include <CLI/CLI.hpp>

namespace cotter::cli {

namespace {
enum class Choice : int {};  // an enumeration, so that help and complaints speak of words and not of numbers

std::map<std::string, Choice> choices_of(const std::map<std::string, int>& words) {
    std::map<std::string, Choice> choices;
    for (const auto& [word, value] : words) choices.emplace(word, Choice{value});
    return choices;
}
}  // namespace

Option& Option::required() {
    inner_->required();
    return *this;
}

Option& Option::needs(const Option& other) {
    inner_->needs(other.inner_);
    return *this;
}

Option& Option::expects(int count) {
    inner_->expected(count);
    return *this;
}

Option& Option::between(int least, int greatest) {
    inner_->check(CLI::Range(least, greatest));
    return *this;
}

Option Parser::add_option(const std::string& name, std::string& to, const std::string& help) {
    return Option(inner_->add_option(name, to, help));
}

Option Parser::add_option(const std::string& name, std::vector<std::string>& to, const std::string& help) {
    return Option(inner_->add_option(name, to, help));
}

Option Parser::add_option(const std::string& name, int& to, const std::string& help) {
    return Option(inner_->add_option(name, to, help));
}

Option Parser::add_option(const std::string& name, std::size_t& to, const std::string& help) {
    return Option(inner_->add_option(name, to, help));
}

Option Parser::add_option(const std::string& name, float& to, const std::string& help) {
    return Option(inner_->add_option(name, to, help));
}

Option Parser::add_flag(const std::string& name, bool& to, const std::string& help) {
    return Option(inner_->add_flag(name, to, help));
}

Option Parser::add_choice_of(const std::string& name, const Words& words, SetChosen set, const std::string& help) {
    const std::function<void(const Choice&)> chosen = [set = std::move(set)](const Choice& one) {
        set({static_cast<int>(one)});
    };
    return Option(inner_->add_option_function<Choice>(name, chosen, help)
                      ->transform(CLI::CheckedTransformer(choices_of(words), CLI::ignore_case)));
}

Option Parser::add_choices_of(const std::string& name, const Words& words, SetChosen set, const std::string& help) {
    const std::function<void(const std::vector<Choice>&)> chosen =
        [set = std::move(set)](const std::vector<Choice>& all) {
            std::vector<int> numbers;
            for (const Choice one : all) numbers.push_back(static_cast<int>(one));
            set(numbers);
        };
    return Option(inner_->add_option_function<std::vector<Choice>>(name, chosen, help)
                      ->transform(CLI::CheckedTransformer(choices_of(words))));
}

void Parser::take_any() {
    inner_->allow_extras();
}

bool Parser::given() const {
    return inner_->parsed();
}

CommandLine::CommandLine(const std::string& description, const std::string& version)
    : inner_(std::make_unique<CLI::App>(description)) {
    inner_->name("cotter");
    inner_->set_version_flag("--version", version);
    inner_->require_subcommand(1);
}

CommandLine::~CommandLine() = default;

Parser CommandLine::add_command(const std::string& name, const std::string& help) {
    return Parser(inner_->add_subcommand(name, help));
}

std::optional<int> CommandLine::parse(std::vector<std::string> words, int wrong_use) {
    std::reverse(words.begin(), words.end());  // the parser wants the last one first
    try {
        inner_->parse(std::move(words));
    } catch (const CLI::ParseError& wrong) {
        return inner_->exit(wrong) == 0 ? 0 : wrong_use;
    }
    return std::nullopt;
}

}  // namespace cotter::cli
