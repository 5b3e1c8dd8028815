#include "app/ui/icons.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <vector>

namespace sillwalk::ui {

namespace {

constexpr float pi = std::numbers::pi_v<float>;

/// Draws in a grid of -10 … 10 around the middle.
class Pen {
public:
    Pen(Canvas& canvas, Point center, float size, Color color)
        : canvas_(canvas), center_(center), unit_(size / 20), color_(color), width_(std::max(2.0F, size * 0.072F)) {}

    void lines(std::initializer_list<Point> points, bool closed = false) {
        std::vector<Point> placed;
        for (const Point p : points) placed.push_back(at(p));
        canvas_.polyline(placed, color_, width_, closed);
    }
    void disc(Point p, float radius) { canvas_.fill_circle(at(p), radius * unit_, color_); }
    void ring(Point p, float radius) { canvas_.stroke_circle(at(p), radius * unit_ + width_ / 2, color_, width_); }
    void box(Point a, Point b) {
        const Point p = at(a);
        const Point q = at(b);
        const float half = width_ / 2;
        canvas_.stroke_rect({p.x - half, p.y - half, q.x + half, q.y + half}, color_, width_, 3 * unit_);
    }
    /// From a point along the right half of a circle to another point, in one stroke.
    void hook(Point from, Point middle, float radius, Point to) {
        std::vector<Point> points{at(from)};
        constexpr int steps = 24;
        for (int i = 0; i <= steps; ++i) {
            const float angle = pi * (static_cast<float>(i) / steps - 0.5F);
            points.push_back(at({middle.x + radius * std::cos(angle), middle.y + radius * std::sin(angle)}));
        }
        points.push_back(at(to));
        canvas_.polyline(points, color_, width_);
    }
    void mirror() { mirror_ = -1; }

private:
    [[nodiscard]] Point at(Point p) const { return {center_.x + mirror_ * p.x * unit_, center_.y + p.y * unit_}; }

    Canvas& canvas_;
    Point center_;
    float unit_;
    Color color_;
    float width_;
    float mirror_ = 1;
};

void overview(Pen& pen) {
    for (const float y : {-6.0F, 0.0F, 6.0F}) pen.lines({{-3, y}, {9, y}});
    pen.disc({-7.5F, -6}, 2.6F);
    pen.ring({-7.5F, 0}, 1.7F);
    pen.ring({-7.5F, 6}, 1.7F);
}
void route(Pen& pen) {
    pen.lines({{-10, 7}, {-1, 7}, {-1, 1}, {10, 1}});
    pen.disc({-5, 2.6F}, 4);
    pen.lines({{4, -8}, {4, -3.5F}});
    pen.lines({{1.5F, -8}, {6.5F, -8}});
}
void loads(Pen& pen) {
    pen.box({-9, -9}, {9, 1});
    pen.disc({-5.2F, 6}, 3.6F);
    pen.ring({5.2F, 6}, 2.8F);
}
void washing(Pen& pen) {
    pen.lines({{0, -10}, {5.4F, -2}, {6.3F, 2.2F}, {4.5F, 6.6F}, {0, 8.6F}, {-4.5F, 6.6F}, {-6.3F, 2.2F}, {-5.4F, -2}},
              true);
    pen.disc({0, 2.6F}, 2.9F);
}
void answer(Pen& pen) {
    pen.disc({-4.6F, 0}, 4.8F);
    pen.lines({{-10, 6.5F}, {10, 6.5F}});
    pen.lines({{3, -2}, {5.6F, 1}, {10, -5.5F}});
}
void camera(Pen& pen, float lens) {
    pen.box({-10, -6.5F}, {10, 8});
    pen.lines({{-4, -6.5F}, {-2.4F, -9.4F}, {2.4F, -9.4F}, {4, -6.5F}});
    pen.disc({0, 0.8F}, lens);
}
void evidence(Pen& pen) {
    camera(pen, 2);
    pen.ring({0, 0.8F}, 4.4F);
}
void hand_over(Pen& pen) {
    pen.lines({{-7, -10}, {3, -10}, {7, -6}, {7, 10}, {-7, 10}}, true);
    pen.lines({{-3.4F, -3}, {3.4F, -3}});
    pen.lines({{-3.4F, 1}, {0, 1}});
    pen.disc({2.8F, 5}, 2.8F);
}
void undo(Pen& pen) {
    pen.hook({-7, -5}, {2, 1}, 6, {-3, 7});
    pen.lines({{-2.8F, -9.4F}, {-7.4F, -5}, {-2.8F, -0.6F}});
}
void theme_sign(Pen& pen) {
    pen.disc({0, 0}, 4.2F);
    for (int i = 0; i < 8; ++i) {
        const float a = static_cast<float>(i) * pi / 4;
        pen.lines({{std::cos(a) * 6.8F, std::sin(a) * 6.8F}, {std::cos(a) * 10, std::sin(a) * 10}});
    }
}
void home(Pen& pen) {
    pen.lines({{-10, 7.5F}, {0, 7.5F}, {0, 2}, {10, 2}});
    pen.disc({-4.6F, 1.9F}, 5);
    pen.ring({4.5F, -3.6F}, 4.2F);
}
void setup(Pen& pen) {
    for (const float y : {-6.0F, 6.0F}) pen.lines({{-10, y}, {10, y}});
    pen.lines({{-10, 0}, {10, 0}});
    pen.disc({-4, -6}, 3);
    pen.disc({4, 0}, 3);
    pen.disc({-2, 6}, 3);
}
void backspace(Pen& pen) {
    pen.lines({{-10, 0}, {-4, -7}, {10, -7}, {10, 7}, {-4, 7}}, true);
    pen.lines({{-0.6F, -3}, {5.4F, 3}});
    pen.lines({{5.4F, -3}, {-0.6F, 3}});
}
void person(Pen& pen) {
    pen.disc({0, -6}, 3.4F);
    pen.lines({{-5.5F, 9}, {-5.5F, 3}, {-3, 0}, {3, 0}, {5.5F, 3}, {5.5F, 9}});
}
void share(Pen& pen) {
    pen.lines({{-8, 0}, {-8, 9}, {8, 9}, {8, 0}});
    pen.lines({{0, 4}, {0, -9}});
    pen.lines({{-5, -4}, {0, -9}, {5, -4}});
}
void erase(Pen& pen) {
    pen.lines({{-9, -6}, {9, -6}});
    pen.lines({{-3, -6}, {-3, -9}, {3, -9}, {3, -6}});
    pen.lines({{-6.5F, -6}, {-5.5F, 9}, {5.5F, 9}, {6.5F, -6}});
}
void note(Pen& pen) {
    pen.lines({{-8, 8}, {-8, 4}, {5, -9}, {9, -5}, {-4, 8}}, true);
    pen.lines({{1, -5}, {5, -1}});
}

void draw(Pen& pen, Icon icon) {
    switch (icon) {
        case Icon::none:
            break;
        case Icon::home:
            home(pen);
            break;
        case Icon::overview:
            overview(pen);
            break;
        case Icon::route:
            route(pen);
            break;
        case Icon::loads:
            loads(pen);
            break;
        case Icon::washing:
            washing(pen);
            break;
        case Icon::answer:
            answer(pen);
            break;
        case Icon::evidence:
            evidence(pen);
            break;
        case Icon::hand_over:
            hand_over(pen);
            break;
        case Icon::setup:
            setup(pen);
            break;
        case Icon::redo:
            pen.mirror();
            [[fallthrough]];
        case Icon::undo:
            undo(pen);
            break;
        case Icon::theme:
            theme_sign(pen);
            break;
        case Icon::camera:
            camera(pen, 3.9F);
            break;
        case Icon::backspace:
            backspace(pen);
            break;
        case Icon::plus:
            pen.lines({{0, -7}, {0, 7}});
            [[fallthrough]];
        case Icon::minus:
            pen.lines({{-7, 0}, {7, 0}});
            break;
        case Icon::close:
            pen.lines({{-7, -7}, {7, 7}});
            pen.lines({{7, -7}, {-7, 7}});
            break;
        case Icon::more:
            pen.disc({-7, 0}, 2.3F);
            pen.ring({0, 0}, 1.5F);
            pen.ring({7, 0}, 1.5F);
            break;
        case Icon::check:
            pen.lines({{-8, 0}, {-2.5F, 6}, {8, -6}});
            break;
        case Icon::share:
            share(pen);
            break;
        case Icon::erase:
            erase(pen);
            break;
        case Icon::person:
            person(pen);
            break;
        case Icon::note:
            note(pen);
            break;
        case Icon::up:
            pen.lines({{-7, 4}, {0, -4}, {7, 4}});
            break;
        case Icon::down:
            pen.lines({{-7, -4}, {0, 4}, {7, -4}});
            break;
        case Icon::left:
            pen.mirror();
            [[fallthrough]];
        case Icon::right:
            pen.lines({{-4, -7}, {4, 0}, {-4, 7}});
            break;
        case Icon::arrow_left:
            pen.mirror();
            [[fallthrough]];
        case Icon::arrow_right:
            pen.lines({{-9, 0}, {8, 0}});
            pen.lines({{2, -6}, {8, 0}, {2, 6}});
            break;
    }
}

}  // namespace

void draw_icon(Canvas& canvas, Icon icon, Point center, float size, Color color) {
    const ShapeKey key{ShapeKey::icon, static_cast<std::uint32_t>(icon), {size}, color, {}};
    canvas.shape(key, center, size, [&](Point at) {
        Pen pen(canvas, at, size, color);
        draw(pen, icon);
    });
}

}  // namespace sillwalk::ui
