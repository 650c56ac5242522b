// See colour.h. Constants from IEC 61966-2-1 (sRGB), WCAG 2.2, CIE 142 (CIEDE2000).
#include "app/ui/colour.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace cotter {

namespace {

using Triple = std::array<double, 3>;
using Matrix = std::array<Triple, 3>;

constexpr Matrix kProtanopia{
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix kDeuteranopia{
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix kTritanopia{
    {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};
constexpr Matrix kToXyz{
    {{0.4124564, 0.3575761, 0.1804375}, {0.2126729, 0.7151522, 0.0721750}, {0.0193339, 0.1191920, 0.9503041}}};
constexpr Triple kWhite{0.95047, 1.0, 1.08883};

double to_linear(std::uint8_t channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

std::uint8_t from_linear(double light) {
    const double c = std::clamp(light, 0.0, 1.0);
    const double s = c <= 0.0031308 ? c * 12.92 : 1.055 * std::pow(c, 1 / 2.4) - 0.055;
    return static_cast<std::uint8_t>(std::lround(s * 255));
}

Triple linear(Rgb colour) {
    return {to_linear(colour.r), to_linear(colour.g), to_linear(colour.b)};
}

Triple multiply(const Matrix& m, const Triple& v) {
    Triple out{};
    for (std::size_t i = 0; i < 3; ++i) out[i] = m[i][0] * v[0] + m[i][1] * v[1] + m[i][2] * v[2];
    return out;
}

double radians(double degrees) {
    return degrees * std::numbers::pi / 180;
}

// The hue angle in degrees, 0…360; 0 for a grey.
double hue(double a, double b) {
    if (a == 0 && b == 0) return 0;
    const double h = std::atan2(b, a) * 180 / std::numbers::pi;
    return h < 0 ? h + 360 : h;
}

double pow7(double x) {
    return std::pow(x, 7);
}

constexpr double k25To7 = 6103515625.0;

// Chroma and hue after CIEDE2000 has stretched the a axis of near-greys.
struct Stretched {
    double chroma, hue;
};

Stretched stretch(const Lab& c, double factor) {
    const double a = c.a * factor;
    return {std::hypot(a, c.b), hue(a, c.b)};
}

double hue_step(const Stretched& x, const Stretched& y) {
    if (x.chroma * y.chroma == 0) return 0;
    const double d = y.hue - x.hue;
    return d > 180 ? d - 360 : d < -180 ? d + 360 : d;
}

double hue_mean(const Stretched& x, const Stretched& y) {
    const double sum = x.hue + y.hue;
    if (x.chroma * y.chroma == 0) return sum;
    if (std::abs(x.hue - y.hue) <= 180) return sum / 2;
    return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}

}  // namespace

double luminance(Rgb colour) {
    const auto [r, g, b] = linear(colour);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

double contrast_ratio(Rgb a, Rgb b) {
    const auto [dark, light] = std::minmax({luminance(a), luminance(b)});
    return (light + 0.05) / (dark + 0.05);
}

Rgb simulate_colour_blindness(Rgb colour, Vision vision) {
    if (vision == Vision::usual) return colour;
    const Matrix& m = vision == Vision::protanopia     ? kProtanopia
                      : vision == Vision::deuteranopia ? kDeuteranopia
                                                       : kTritanopia;
    const auto [r, g, b] = multiply(m, linear(colour));
    return {from_linear(r), from_linear(g), from_linear(b)};
}

Lab to_lab(Rgb colour) {
    Triple f = multiply(kToXyz, linear(colour));
    for (std::size_t i = 0; i < 3; ++i) {
        const double t = f[i] / kWhite[i];
        f[i] = t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }
    return {116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])};
}

double delta_e(const Lab& x, const Lab& y) {
    const double mean_chroma7 = pow7((std::hypot(x.a, x.b) + std::hypot(y.a, y.b)) / 2);
    const double factor = 1 + 0.5 * (1 - std::sqrt(mean_chroma7 / (mean_chroma7 + k25To7)));
    const Stretched sx = stretch(x, factor);
    const Stretched sy = stretch(y, factor);
    const double chroma = (sx.chroma + sy.chroma) / 2;
    const double h = hue_mean(sx, sy);
    const double weight = 1 - 0.17 * std::cos(radians(h - 30)) + 0.24 * std::cos(radians(2 * h)) +
                          0.32 * std::cos(radians(3 * h + 6)) - 0.20 * std::cos(radians(4 * h - 63));
    const double l50 = (x.l + y.l) / 2 - 50;
    const double scale_l = 1 + 0.015 * l50 * l50 / std::sqrt(20 + l50 * l50);
    const double dl = (y.l - x.l) / scale_l;
    const double dc = (sy.chroma - sx.chroma) / (1 + 0.045 * chroma);
    const double dh =
        2 * std::sqrt(sx.chroma * sy.chroma) * std::sin(radians(hue_step(sx, sy) / 2)) / (1 + 0.015 * chroma * weight);
    const double bend = (h - 275) / 25;
    const double turn =
        -2 * std::sqrt(pow7(chroma) / (pow7(chroma) + k25To7)) * std::sin(radians(60 * std::exp(-bend * bend)));
    return std::sqrt(dl * dl + dc * dc + dh * dh + turn * dc * dh);
}

double delta_e(Rgb x, Rgb y) {
    return delta_e(to_lab(x), to_lab(y));
}

}  // namespace cotter
