// See labels.h.
#include "app/driver/labels.h"

#include <algorithm>
#include <numeric>

#include "core/base/text.h"

namespace cotter {

std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t corner = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = corner + (a[i - 1] != b[j - 1]);
            corner = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, change});
        }
    }
    return row[b.size()];
}

std::vector<std::string> likest(std::string_view wanted, std::vector<std::string> labels, std::size_t most) {
    const std::string low = ascii_lower(wanted);
    const auto rank = [&](const std::string& label) {
        const std::string other = ascii_lower(label);
        return other.find(low) != std::string::npos ? std::size_t{0} : edit_distance(low, other);
    };
    std::sort(labels.begin(), labels.end());
    labels.erase(std::unique(labels.begin(), labels.end()), labels.end());
    std::stable_sort(labels.begin(), labels.end(), [&](const auto& a, const auto& b) { return rank(a) < rank(b); });
    if (labels.size() > most) labels.resize(most);
    return labels;
}

}  // namespace cotter
