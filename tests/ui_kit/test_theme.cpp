/// The colours: WCAG 2.2 contrast, and fills of outcomes apart for every kind of colour vision.
/// Contrast: WCAG 2.2, definition of "contrast ratio" and "relative luminance".
/// Colour difference: CIEDE2000, checked against pairs of Sharma, Wu, Dalal 2005 (Color Res. Appl. 30, table 1).
/// Colour vision: matrices of Machado, Oliveira, Fernandes 2009 (IEEE TVCG 15), severity 1.0.

#include "app/ui/theme.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>

using namespace sillwalk;

namespace {

using Vec = std::array<double, 3>;
using Matrix = std::array<Vec, 3>;

double linear(std::uint8_t code) {
    const double c = code / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}
Vec linear_of(ui::Color c) {
    return {linear(c.r), linear(c.g), linear(c.b)};
}
double luminance(ui::Color c) {
    const Vec l = linear_of(c);
    return 0.2126 * l[0] + 0.7152 * l[1] + 0.0722 * l[2];
}
double contrast(ui::Color a, ui::Color b) {
    const double x = luminance(a);
    const double y = luminance(b);
    return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

constexpr Matrix normal{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
constexpr Matrix protan{
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix deutan{
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix tritan{
    {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};

Vec lab(ui::Color color, const Matrix& sight) {
    const Vec in = linear_of(color);
    Vec l{};
    for (std::size_t i = 0; i < 3; ++i)
        l[i] = std::clamp(sight[i][0] * in[0] + sight[i][1] * in[1] + sight[i][2] * in[2], 0.0, 1.0);
    const double x = (0.4124564 * l[0] + 0.3575761 * l[1] + 0.1804375 * l[2]) / 0.95047;
    const double y = 0.2126729 * l[0] + 0.7151522 * l[1] + 0.0721750 * l[2];
    const double z = (0.0193339 * l[0] + 0.1191920 * l[1] + 0.9503041 * l[2]) / 1.08883;
    const auto f = [](double t) { return t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116; };
    return {116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))};
}

constexpr double degree = 3.14159265358979323846 / 180;

double hue(double a, double b) {
    if (a == 0 && b == 0) return 0;
    const double h = std::atan2(b, a) / degree;
    return h < 0 ? h + 360 : h;
}

double ciede2000(const Vec& p, const Vec& q) {
    const double c_mean = (std::hypot(p[1], p[2]) + std::hypot(q[1], q[2])) / 2;
    const double g = 0.5 * (1 - std::sqrt(std::pow(c_mean, 7) / (std::pow(c_mean, 7) + std::pow(25.0, 7))));
    const double a1 = (1 + g) * p[1];
    const double a2 = (1 + g) * q[1];
    const double c1 = std::hypot(a1, p[2]);
    const double c2 = std::hypot(a2, q[2]);
    const double h1 = hue(a1, p[2]);
    const double h2 = hue(a2, q[2]);
    double dh = h2 - h1;
    if (c1 * c2 == 0)
        dh = 0;
    else if (dh > 180)
        dh -= 360;
    else if (dh < -180)
        dh += 360;
    const double d_hue = 2 * std::sqrt(c1 * c2) * std::sin(dh / 2 * degree);
    const double l = (p[0] + q[0]) / 2;
    const double c = (c1 + c2) / 2;
    double h = (h1 + h2) / 2;
    if (c1 * c2 == 0)
        h = h1 + h2;
    else if (std::abs(h1 - h2) > 180)
        h = h1 + h2 < 360 ? (h1 + h2 + 360) / 2 : (h1 + h2 - 360) / 2;
    const double t = 1 - 0.17 * std::cos((h - 30) * degree) + 0.24 * std::cos(2 * h * degree) +
                     0.32 * std::cos((3 * h + 6) * degree) - 0.20 * std::cos((4 * h - 63) * degree);
    const double sl = 1 + 0.015 * (l - 50) * (l - 50) / std::sqrt(20 + (l - 50) * (l - 50));
    const double sc = 1 + 0.045 * c;
    const double sh = 1 + 0.015 * c * t;
    const double rotation = 30 * std::exp(-std::pow((h - 275) / 25, 2));
    const double rc = 2 * std::sqrt(std::pow(c, 7) / (std::pow(c, 7) + std::pow(25.0, 7)));
    const double rt = -std::sin(2 * rotation * degree) * rc;
    const double x = (q[0] - p[0]) / sl;
    const double y = (c2 - c1) / sc;
    const double z = d_hue / sh;
    return std::sqrt(x * x + y * y + z * z + rt * y * z);
}

constexpr ui::ThemeName all_themes[] = {ui::ThemeName::light, ui::ThemeName::sun, ui::ThemeName::dark};

}  // namespace

TEST_CASE("the oracle: CIEDE2000 of published pairs", "[theme]") {
    CHECK(ciede2000({50, 2.6772, -79.7751}, {50, 0, -82.7485}) == Approx(2.0425).margin(5e-5));
    CHECK(ciede2000({50, -1.3802, -84.2814}, {50, 0, -82.7485}) == Approx(1.0).margin(5e-5));
    CHECK(ciede2000({50, 2.5, 0}, {73, 25, -18}) == Approx(27.1492).margin(5e-5));
    CHECK(ciede2000({2.0776, 0.0795, -1.135}, {0.9033, -0.0636, -0.5514}) == Approx(0.9082).margin(5e-5));
}

TEST_CASE("the oracle: contrast of black on white is 21", "[theme]") {
    CHECK(contrast(ui::rgb(0x000000), ui::rgb(0xFFFFFF)) == Approx(21));
    CHECK(contrast(ui::rgb(0x777777), ui::rgb(0xFFFFFF)) == Approx(4.48).margin(0.005));
}

TEST_CASE("A5 every pair of colours that is drawn reaches its contrast", "[theme]") {
    for (const ui::ThemeName name : all_themes) {
        const auto pairs = ui::contrast_pairs(ui::theme(name));
        CHECK(pairs.size() > 30);
        for (const ui::ContrastPair& pair : pairs) {
            INFO(ui::theme_name(name) << ": " << pair.name);
            CHECK(contrast(pair.ink, pair.ground) >= pair.least);
        }
    }
}

TEST_CASE("A5 the fills of holds, tight and fails differ for every kind of colour vision", "[theme]") {
    for (const ui::ThemeName name : all_themes) {
        for (const Matrix& sight : {normal, protan, deutan, tritan}) {
            const ui::Theme& t = ui::theme(name);
            const ui::Badge states[] = {ui::Badge::holds, ui::Badge::tight, ui::Badge::fails};
            for (int i = 0; i < 3; ++i) {
                for (int j = i + 1; j < 3; ++j) {
                    INFO(ui::theme_name(name) << " " << i << " " << j);
                    CHECK(ciede2000(lab(t.badge_of(states[i]).fill, sight), lab(t.badge_of(states[j]).fill, sight)) >=
                          20);
                }
            }
        }
    }
}
