/*
 * The six-coat, twelve-day film job solved by SUNDIALS CVODE: the peer of coatwright.film.
 *
 * The same equations, grid, error norm and milestones as FilmEquations, FilmGrid, RosenbrockStepper,
 * MilestoneTracker and CloudingTracker, written anew; only the integrator differs. That both end at
 * the same numbers is the proof that they solve the same problem. Haze is left out on both sides.
 *
 * CVODE is given what helps it: BDF, Newton with the exact Jacobian, one solver kept for every stage
 * of the job, and a choice of linear solvers. The Jacobian is block-tridiagonal with one full row and
 * column (film temperature): "band" drops what lies outside the band, which Newton forgives; "klu"
 * and "dense" hold all of it.
 *
 * usage: cvode_film SOLVER WHOLE|MERGED RTOL SECONDS     SOLVER = band | klu | dense
 */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunlinsol/sunlinsol_klu.h>
#include <sunmatrix/sunmatrix_band.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunmatrix/sunmatrix_sparse.h>
#include <time.h>

enum { COATS = 6, PER_COAT = 8, CELLS = COATS * PER_COAT, WOOD = 10, UNKNOWNS = 2 * CELLS + 1 + WOOD };
enum { OPEN, TOUCH, RECOAT, RESTED, DRY_HARD, RUB_OUT, WRAP, FULL, KINDS };
enum { MEAN, NEWEST = 2, SKIN = 4, TOP = 6, FILM = 8, SUMS };

#define DAY 86400.0
#define KELVIN 273.15
#define GAS 8.314462618
#define PRESSURE 101325.0
#define BAND 3

static const double COAT_AT[COATS] = {0, 900, 1800, 2700, 6300, 8700};
static const double UNTIL = 8700 + 12 * DAY;
static const double AIR_C = 20, RH = 0.5, DRAUGHT = 0.1;
static const double WET = 75e-6, CUT = 179.74, STRENGTH = 0.95;

/* The set "shellac". */
static const double DG = 3.83e-15, DL = 3e-10, STEEP = 5.08, EG = 41e3 / GAS, EL = 15e3 / GAS, FW = 5;
static const double CHI_E = 0.5, CHI_W = 2.5, G = 1.4, CHI23 = 0.2, GLASS = 323.15;
static const double VE = 0.04607 / 789, VW = 0.01802 / 998, LE = 42.3e3, LW = 44.2e3;
static const double HEAT_E = 789 * 2400.0, HEAT_W = 998 * 2400.0, HEAT_P = 1140 * 1500.0;
static const double A = 1.6798, B = 0.9227;

static double wood_k, wood_capacity, air_k, room_pa, transfer, kc_e, kc_w, ln_dg, rise;
static double wood_dz[WOOD], wood_face[WOOD];
static double rtol;

typedef struct {
  int cells, from, film, n;
  double dx[CELLS], skin[CELLS], resin, newest;
  double mobility[CELLS], heat;
  /* the Jacobian's parts */
  double diag[CELLS][4], up[CELLS][4], low[CELLS][4], col[2 * CELLS], row[2 * CELLS], corner;
  double slope[2 * CELLS], by_film[CELLS];
  double ne, nw;
} Film;

typedef struct {
  double milestone[COATS][KINDS], x_before[COATS], peak[COATS], low[COATS];
  long steps, rates, jacobians, factors;
} Answer;

static double most(double a, double b) { return a > b ? a : b; }

static double water_pa(double c) {
  double t = c + KELVIN;
  return exp(-5.8002206e3 / t + 1.3914993 + t * (-4.8640239e-2 + t * (4.1764768e-5 - t * 1.4452093e-8)) +
             6.5459673 * log(t));
}

static double vapour_speed(double molar_g, double volume, double h, double rho, double alpha) {
  double reach = cbrt(20.1) + cbrt(volume);
  double d = 1e-7 * pow(air_k, 1.75) * sqrt(1 / 28.97 + 1 / molar_g) / (reach * reach);
  return h / (rho * 1006) * pow(d / alpha, 2.0 / 3);
}

static void set_up(void) {
  double gravity = 0.55, mc = 9, t = 293.15;
  wood_k = gravity * (0.1941 + 0.004064 * mc) + 0.01864;
  double cp = 1000 * ((0.1031 + 0.003867 * t + 4.18 * mc / 100) / (1 + mc / 100) +
                      mc * (-0.06191 + 2.36e-4 * t - 1.33e-4 * mc));
  wood_capacity = gravity * 1000 * (1 + mc / 100) * cp;
  double sum = 0;
  for (int i = 0; i < WOOD; i++) sum += wood_dz[i] = pow(1.5, i);
  for (int i = 0; i < WOOD; i++) wood_dz[i] *= 0.018 / sum;
  for (int i = 0; i + 1 < WOOD; i++) wood_face[i] = wood_k / (0.5 * (wood_dz[i] + wood_dz[i + 1]));

  air_k = AIR_C + KELVIN;
  room_pa = RH * water_pa(AIR_C);
  double rho = PRESSURE * 0.02897 / (GAS * air_k);
  double k = 0.0241 * pow(air_k / KELVIN, 0.81);
  double nu = 1.716e-5 * pow(air_k / KELVIN, 0.7) / rho;
  double alpha = k / (rho * 1006);
  double length = 0.3;
  double forced = 0.664 * sqrt(DRAUGHT * length / nu) * cbrt(nu / alpha) * k / length;
  transfer = cbrt(27 + forced * forced * forced);
  kc_e = vapour_speed(46.07, 2 * 16.5 + 6 * 1.98 + 5.48, transfer, rho, alpha) / GAS;
  kc_w = vapour_speed(18.02, 12.7, transfer, rho, alpha) / GAS;
  ln_dg = log(DG);
  rise = log(DL / DG) / (1 - exp(-STEEP));
}

/* ---- the film ------------------------------------------------------------------------------ */

static double glass_k(double e, double w) {
  double me = most(e, 0) * 789, mw = most(w, 0) * 998;
  return (me + mw + 1140) / (1140 / GLASS + me / 97 + mw / 136);
}

static double blush(double ue, double uw) {
  double s = VW / VE, e = most(ue, 0), w = most(uw, 0), resin = 1 / (1 + e + w);
  double b = s / most(e * resin, 1e-9), d = VW / (1.006 / 1140) / most(resin, 1e-9);
  double c = G + CHI_W - s * CHI23;
  double above = b + d - 2 * s * CHI23, below = c * c + (b - 2 * G) * (2 * CHI_W - d);
  return w * resin / (above > 0 && below > 1e-6 ? above / below : 1);
}

/* Moles leaving per m2 and s; false when the temperature is no film's. */
static int flux(Film *f, double ue, double uw, double tf) {
  double c = tf - KELVIN;
  if (!(c > -29 && c < 90)) return 0;
  double e = most(ue, 0), w = most(uw, 0), all = e + w;
  double moles = e / VE + w / VW, r = VE / VW;
  double xw = moles > 0 ? w / VW / moles : 0, mean = moles > 0 ? all / moles : VW;
  double p = 1 / (1 + all), liquid = all * p, weighted = A * (1 - xw) + B * xw;
  double a1 = B * xw / weighted, b1 = A * (1 - xw) / weighted;
  double pe = ue / VE * mean * p *
              exp(liquid * liquid * A * a1 * a1 + p / mean * VE + CHI_E * p * p +
                  (G * r + CHI_E - CHI_W * r) * w * p * p) *
              1000 * exp(16.8958 - 3795.17 / (c + 230.918));
  double pw = uw / VW * mean * p *
              exp(liquid * liquid * B * b1 * b1 + p / mean * VW + CHI_W * p * p +
                  (G + CHI_W - CHI_E / r) * e * p * p) *
              water_pa(c);
  double a = PRESSURE - fmin(pe + pw, 9e4), b = PRESSURE - room_pa;
  double stefan = fabs(b - a) < 1e-6 ? PRESSURE / a : PRESSURE * log(b / a) / (b - a);
  double out = stefan / (0.5 * (air_k + tf));
  f->ne = kc_e * out * pe;
  f->nw = kc_w * out * (pw - room_pa);
  return 1;
}

static int rates(realtype t, N_Vector vy, N_Vector vf, void *data) {
  (void)t;
  Film *f = data;
  const double *y = N_VGetArrayPointer(vy);
  double *g = N_VGetArrayPointer(vf);
  int n = f->cells, film = f->film;
  double tf = y[film], inverse = 1 / tf - 1 / 293.15, heat = 50 + HEAT_P * f->resin, in_e = 0, in_w = 0;
  for (int j = 0; j < n; j++) {
    double e = most(y[2 * j], 0), w = most(y[2 * j + 1], 0), dx = f->dx[j];
    heat += dx * (e * HEAT_E + w * HEAT_W);
    double q = e / (1 + e), p = 1 / (1 + e + w);
    double m = exp(ln_dg + rise * (1 - exp(-STEEP * q)) - (EG - (EG - EL) * q) * inverse) * p * p;
    f->mobility[j] = m;
    if (j > 0) {
      double k = (m + f->mobility[j - 1]) / (dx + f->dx[j - 1]), per = 1 / f->dx[j - 1];
      double up_e = k * (y[2 * j] - y[2 * j - 2]), up_w = FW * k * (y[2 * j + 1] - y[2 * j - 1]);
      g[2 * j - 2] = (up_e - in_e) * per;
      g[2 * j - 1] = (up_w - in_w) * per;
      in_e = up_e;
      in_w = up_w;
    }
  }
  f->heat = heat;
  if (!flux(f, y[film - 2], y[film - 1], tf)) return 1;
  g[film - 2] = (-f->ne * VE - in_e) / f->dx[n - 1];
  g[film - 1] = (-f->nw * VW - in_w) / f->dx[n - 1];
  double mean = 0.5 * (air_k + tf), hr = 4 * 0.9 * 5.670374e-8 * mean * mean * mean;
  double down = wood_k / (wood_dz[0] / 2) * (tf - y[film + 1]);
  g[film] = ((transfer + hr) * (air_k - tf) - f->ne * LE - f->nw * LW - down) / heat;
  for (int i = 0; i < WOOD; i++) {
    double next = i + 1 < WOOD ? wood_face[i] * (y[film + 1 + i] - y[film + 2 + i]) : 0;
    g[film + 1 + i] = (down - next) / (wood_capacity * wood_dz[i]);
    down = next;
  }
  return 0;
}

static void jacobian_parts(Film *f, const double *y, const double *g) {
  int n = f->cells, film = f->film;
  double tf = y[film], inverse = 1 / tf - 1 / 293.15, per_heat;
  static const double factor[2] = {1, 5};
  memset(f->diag, 0, sizeof f->diag[0] * n);
  memset(f->col, 0, sizeof(double) * 2 * n);
  /* f->mobility may belong to another state than y. */
  double heat = 50 + HEAT_P * f->resin;
  for (int j = 0; j < n; j++) {
    double e = most(y[2 * j], 0), w = most(y[2 * j + 1], 0), rest = 1 / (1 + e), q = e * rest;
    double p = 1 / (1 + e + w), ex = exp(-STEEP * q);
    double m = exp(ln_dg + rise * (1 - ex) - (EG - (EG - EL) * q) * inverse) * p * p;
    f->mobility[j] = m;
    heat += f->dx[j] * (e * HEAT_E + w * HEAT_W);
    f->slope[2 * j] = y[2 * j] > 0 ? m * ((rise * STEEP * ex + (EG - EL) * inverse) * rest * rest - 2 * p) : 0;
    f->slope[2 * j + 1] = y[2 * j + 1] > 0 ? -2 * m * p : 0;
    f->by_film[j] = m * (EG - (EG - EL) * q) / (tf * tf);
  }
  per_heat = 1 / heat;
  for (int j = 0; j < n; j++) {
    double share = -g[film] * f->dx[j] * per_heat;
    f->row[2 * j] = y[2 * j] > 0 ? share * HEAT_E : 0;
    f->row[2 * j + 1] = y[2 * j + 1] > 0 ? share * HEAT_W : 0;
  }
  for (int j = 0; j + 1 < n; j++) {
    double between = 1 / (f->dx[j] + f->dx[j + 1]), k = (f->mobility[j] + f->mobility[j + 1]) * between;
    double by_film = (f->by_film[j] + f->by_film[j + 1]) * between;
    double below = 1 / f->dx[j], above = 1 / f->dx[j + 1];
    for (int i = 0; i < 2; i++) {
      double d = factor[i] * (y[2 * j + 2 + i] - y[2 * j + i]);
      f->col[2 * j + i] += d * by_film * below;
      f->col[2 * j + 2 + i] -= d * by_film * above;
      for (int c = 0; c < 2; c++) {
        double self = i == c ? factor[i] * k : 0;
        double lower = d * between * f->slope[2 * j + c] - self;
        double upper = d * between * f->slope[2 * j + 2 + c] + self;
        f->diag[j][2 * i + c] += lower * below;
        f->up[j][2 * i + c] = upper * below;
        f->low[j + 1][2 * i + c] = -lower * above;
        f->diag[j + 1][2 * i + c] -= upper * above;
      }
    }
  }
  double ue = y[film - 2], uw = y[film - 1], thin = 1 / f->dx[n - 1];
  flux(f, ue, uw, tf);
  double ne = f->ne, nw = f->nw, latent = ne * LE + nw * LW;
  for (int c = 0; c < 3; c++) {
    double d = c == 2 ? 1e-5 : 1e-7 * fabs(c == 0 ? ue : uw) + 1e-10;
    flux(f, c == 0 ? ue + d : ue, c == 1 ? uw + d : uw, c == 2 ? tf + d : tf);
    double de = (f->ne - ne) * VE * thin / d, dw = (f->nw - nw) * VW * thin / d;
    double dl = (f->ne * LE + f->nw * LW - latent) / d * per_heat;
    if (c < 2) {
      f->diag[n - 1][c] -= de;
      f->diag[n - 1][2 + c] -= dw;
      f->row[film - 2 + c] -= dl;
    } else {
      double mean = 0.5 * (air_k + tf), hr = 4 * 0.9 * 5.670374e-8 * mean * mean * mean;
      f->col[film - 2] -= de;
      f->col[film - 1] -= dw;
      f->corner = (-transfer - hr + 1.5 * hr / mean * (air_k - tf) - wood_k / (wood_dz[0] / 2)) * per_heat - dl;
    }
  }
  f->heat = heat;
}

/* Row and column of the wood, surface first; -1 is the film. */
static double wood_entry(const Film *f, int row, int col) {
  double film = wood_k / (wood_dz[0] / 2);
  if (row < 0) return film / f->heat;
  double per = 1 / (wood_capacity * wood_dz[row]), above = row ? wood_face[row - 1] : film;
  return col < row ? above * per : col > row ? wood_face[row] * per : -(above + wood_face[row]) * per;
}

static int jacobian_banded(realtype t, N_Vector vy, N_Vector vf, SUNMatrix m, void *data, N_Vector a, N_Vector b,
                           N_Vector c) {
  (void)t, (void)a, (void)b, (void)c;
  Film *f = data;
  jacobian_parts(f, N_VGetArrayPointer(vy), N_VGetArrayPointer(vf));
  int dense = SUNMatGetID(m) == SUNMATRIX_DENSE, film = f->film;
#define PUT(i, j, v)                              \
  do {                                            \
    if (dense)                                    \
      SM_ELEMENT_D(m, i, j) = v;                  \
    else if ((i) - (j) <= BAND && (j) - (i) <= BAND) \
      SM_ELEMENT_B(m, i, j) = v;                  \
  } while (0)
  for (int j = 0; j < f->cells; j++)
    for (int i = 0; i < 2; i++) {
      for (int k = 0; k < 2; k++) {
        PUT(2 * j + i, 2 * j + k, f->diag[j][2 * i + k]);
        if (j + 1 < f->cells) PUT(2 * j + i, 2 * j + 2 + k, f->up[j][2 * i + k]);
        if (j > 0) PUT(2 * j + i, 2 * j - 2 + k, f->low[j][2 * i + k]);
      }
      PUT(2 * j + i, film, f->col[2 * j + i]);
      PUT(film, 2 * j + i, f->row[2 * j + i]);
    }
  PUT(film, film, f->corner);
  for (int i = -1; i < WOOD; i++)
    for (int k = i - 1; k <= i + 1; k++)
      if (k >= -1 && k < WOOD && (i >= 0 || k >= 0)) PUT(film + 1 + i, film + 1 + k, wood_entry(f, i, k));
  return 0;
}

static int jacobian_sparse(realtype t, N_Vector vy, N_Vector vf, SUNMatrix m, void *data, N_Vector a, N_Vector b,
                           N_Vector c) {
  (void)t, (void)a, (void)b, (void)c;
  Film *f = data;
  jacobian_parts(f, N_VGetArrayPointer(vy), N_VGetArrayPointer(vf));
  sunindextype *starts = SM_INDEXPTRS_S(m), *rows = SM_INDEXVALS_S(m), at = 0;
  double *values = SM_DATA_S(m);
  int n = f->cells, film = f->film;
#define ADD(r, v) (rows[at] = (r), values[at++] = (v))
  for (int j = 0; j < n; j++)
    for (int k = 0; k < 2; k++) {
      starts[2 * j + k] = at;
      for (int i = 0; i < 2 && j > 0; i++) ADD(2 * j - 2 + i, f->up[j - 1][2 * i + k]);
      for (int i = 0; i < 2; i++) ADD(2 * j + i, f->diag[j][2 * i + k]);
      for (int i = 0; i < 2 && j + 1 < n; i++) ADD(2 * j + 2 + i, f->low[j + 1][2 * i + k]);
      ADD(film, f->row[2 * j + k]);
    }
  starts[film] = at;
  for (int i = 0; i < film; i++) ADD(i, f->col[i]);
  ADD(film, f->corner);
  ADD(film + 1, wood_entry(f, 0, -1));
  for (int k = 0; k < WOOD; k++) {
    starts[film + 1 + k] = at;
    for (int i = k - 1; i <= k + 1 && i < WOOD; i++) ADD(film + 1 + i, wood_entry(f, i, k));
  }
  starts[f->n] = at;
  return 0;
}

/* The norm of RosenbrockStepper: 1e-3 beside u, 20 K for every temperature. */
static int weights(N_Vector vy, N_Vector vw, void *data) {
  Film *f = data;
  const double *y = N_VGetArrayPointer(vy);
  double *w = N_VGetArrayPointer(vw);
  for (int i = 0; i < f->n; i++) w[i] = 1 / (i < f->film ? rtol * (1e-3 + fabs(y[i])) : 20 * rtol);
  return 0;
}

/* ---- laying coats --------------------------------------------------------------------------- */

static void lay(Film *f, double *y, int coat, int merged) {
  double temps[1 + WOOD];
  for (int i = 0; i <= WOOD; i++) temps[i] = coat ? y[f->film + i] : air_k;
  if (merged && coat) { /* a covered coat keeps its two lowest cells; the rest become one */
    int into = f->from + 2;
    double sum = 0, e = 0, w = 0;
    for (int j = into; j < f->cells; j++) {
      sum += f->dx[j];
      e += f->dx[j] * y[2 * j];
      w += f->dx[j] * y[2 * j + 1];
    }
    f->dx[into] = sum;
    y[2 * into] = e / sum;
    y[2 * into + 1] = w / sum;
    f->cells = into + 1;
  }
  double v = CUT / 1140, solids = v / (1 + v), dry = WET * solids, liquid = (1 - solids) / solids, sum = 0;
  f->from = f->cells;
  for (int i = 0; i < PER_COAT; i++) sum += pow(1.8, i);
  for (int i = 0; i < PER_COAT; i++) {
    f->dx[f->from + i] = dry * pow(1.8, PER_COAT - 1 - i) / sum;
    y[2 * (f->from + i)] = liquid * STRENGTH;
    y[2 * (f->from + i) + 1] = liquid * (1 - STRENGTH);
  }
  f->cells += PER_COAT;
  f->film = 2 * f->cells;
  f->n = f->film + 1 + WOOD;
  f->resin += dry;
  f->newest = dry;
  memcpy(y + f->film, temps, sizeof temps);
  y[f->film] = 0.5 * (air_k + (coat ? temps[0] : temps[1]));
  double above = 0, total = 0;
  for (int j = f->cells - 1; j >= 0; j--) {
    total += f->skin[j] = f->dx[j] * most(0, 1 - above / 1e-6);
    above += f->dx[j];
  }
  for (int j = 0; j < f->cells; j++) f->skin[j] /= total;
}

/* ---- milestones ------------------------------------------------------------------------------ */

static void sums(const Film *f, const double *y, double *s) {
  memset(s, 0, sizeof(double) * SUMS);
  for (int j = 0; j < f->cells; j++)
    for (int i = 0; i < 2; i++) {
      double u = y[2 * j + i];
      s[MEAN + i] += u * f->dx[j] / f->resin;
      s[SKIN + i] += u * f->skin[j];
      if (j >= f->from) s[NEWEST + i] += u * f->dx[j] / f->newest;
    }
  s[TOP] = y[f->film - 2];
  s[TOP + 1] = y[f->film - 1];
  s[FILM] = y[f->film];
}

static double excess(int kind, const double *s) {
  double soft = air_k - glass_k(s[MEAN], s[MEAN + 1]);
  switch (kind) {
    case OPEN: return 0.25 - 1 / (1 + s[NEWEST] + s[NEWEST + 1]);
    case TOUCH: return s[FILM] - glass_k(s[SKIN], s[SKIN + 1]) - 55;
    case RECOAT: return soft - 40;
    case RESTED: return soft - 20.7;
    case DRY_HARD: return soft - 5;
    case RUB_OUT: return most(s[MEAN] / 0.010 - 1, (8 + soft) / 10);
    case WRAP: return most(s[MEAN] / 0.005 - 1, (8 + soft) / 10);
    default: return s[MEAN] / 0.002 - 1;
  }
}

static void at_time(void *cvode, const Film *f, double t, N_Vector between, double *s) {
  CVodeGetDky(cvode, t, 0, between);
  sums(f, N_VGetArrayPointer(between), s);
}

static double crossing(void *cvode, const Film *f, int kind, double low, double high, double f_low, double f_high,
                       N_Vector between) {
  int side = 0;
  for (int i = 0; i < 60 && high - low > 1e-7; i++) {
    double s[SUMS], t = (f_low * high - f_high * low) / (f_low - f_high);
    at_time(cvode, f, t, between, s);
    double value = excess(kind, s);
    if (value > 0) {
      low = t, f_low = value;
      if (side == 1) f_high /= 2;
      side = 1;
    } else {
      high = t, f_high = value;
      if (side == -1) f_low /= 2;
      side = -1;
      if (value == 0) break;
    }
  }
  return high;
}

/* Highest blush number and coldest film of a step inside the coat's first hour. */
static void clouding(void *cvode, const Film *f, double laid, double from, double to, N_Vector between, double *peak,
                     double *low) {
  double s[SUMS], best = -1, end = fmin(to, laid + 3600), width = (end - from) / 4;
  if (width <= 0) return;
  for (int i = 1; i <= 4; i++) {
    at_time(cvode, f, from + width * i, between, s);
    double b = blush(s[TOP], s[TOP + 1]);
    if (b > *peak) *peak = b, best = from + width * i;
    if (from + width * i > laid + 5) *low = fmin(*low, s[FILM]);
  }
  if (best < 0 || best >= end) return;
  double a = best - width, z = best + width;
  for (int i = 0; i < 24; i++) {
    double p = z - 0.6180339887498949 * (z - a), q = a + 0.6180339887498949 * (z - a);
    at_time(cvode, f, p, between, s);
    double bp = blush(s[TOP], s[TOP + 1]);
    at_time(cvode, f, q, between, s);
    double bq = blush(s[TOP], s[TOP + 1]);
    *peak = most(*peak, most(bp, bq));
    if (bp > bq) z = q;
    else a = p;
  }
}

/* ---- the run ---------------------------------------------------------------------------------- */

typedef struct {
  void *cvode;
  N_Vector y, between;
  Film *film;
} Stage;

static void must(int ok, const char *what) {
  if (!ok) {
    fprintf(stderr, "cvode_film: %s failed\n", what);
    exit(1);
  }
}

static Stage stage(SUNContext context, const char *solver, int cells, Film *film) {
  Stage s;
  int n = 2 * cells + 1 + WOOD;
  film->n = n;
  film->cells = cells;
  film->film = 2 * cells;
  s.film = film;
  s.y = N_VNew_Serial(n, context);
  s.between = N_VNew_Serial(n, context);
  N_VConst(300, s.y);
  s.cvode = CVodeCreate(CV_BDF, context);
  must(CVodeInit(s.cvode, rates, 0, s.y) == 0, "CVodeInit");
  CVodeSetUserData(s.cvode, film);
  CVodeWFtolerances(s.cvode, weights);
  CVodeSetMaxNumSteps(s.cvode, 1000000);
  SUNMatrix m;
  SUNLinearSolver linear;
  CVLsJacFn jacobian = jacobian_banded;
  if (!strcmp(solver, "band")) {
    m = SUNBandMatrix(n, BAND, BAND, context);
    linear = SUNLinSol_Band(s.y, m, context);
  } else if (!strcmp(solver, "dense")) {
    m = SUNDenseMatrix(n, n, context);
    linear = SUNLinSol_Dense(s.y, m, context);
  } else {
    m = SUNSparseMatrix(n, n, 2 * cells * 9 + 3 * WOOD + 2, CSC_MAT, context);
    linear = SUNLinSol_KLU(s.y, m, context);
    jacobian = jacobian_sparse;
  }
  must(CVodeSetLinearSolver(s.cvode, linear, m) == 0, "CVodeSetLinearSolver");
  must(CVodeSetJacFn(s.cvode, jacobian) == 0, "CVodeSetJacFn");
  return s;
}

static void run(Stage *stages, int merged, Answer *a) {
  static Film film;
  static double y[UNKNOWNS];
  memset(&film, 0, sizeof film);
  memset(a, 0, sizeof *a);
  for (int coat = 0; coat < COATS; coat++) {
    double laid = COAT_AT[coat], end = coat + 1 < COATS ? COAT_AT[coat + 1] : UNTIL;
    double s[SUMS], before[KINDS], t = laid;
    if (coat) sums(&film, y, s);
    a->x_before[coat] = coat ? air_k - glass_k(s[MEAN], s[MEAN + 1]) : 0;
    lay(&film, y, coat, merged);
    Stage *now = &stages[coat];
    *now->film = film;
    Film *f = now->film;
    double *state = N_VGetArrayPointer(now->y);
    memcpy(state, y, sizeof(double) * f->n);
    must(CVodeReInit(now->cvode, t, now->y) == 0, "CVodeReInit");
    CVodeSetStopTime(now->cvode, end);
    sums(f, state, s);
    for (int k = 0; k < KINDS; k++) {
      before[k] = excess(k, s);
      a->milestone[coat][k] = before[k] <= 0 ? 0 : -1;
    }
    a->peak[coat] = blush(s[TOP], s[TOP + 1]);
    a->low[coat] = 1e9;
    while (t < end) {
      double from = t;
      must(CVode(now->cvode, end, now->y, &t, CV_ONE_STEP) >= 0, "CVode");
      sums(f, state, s);
      for (int k = 0; k < KINDS; k++) {
        if (a->milestone[coat][k] >= 0) continue;
        double value = excess(k, s);
        if (value <= 0)
          a->milestone[coat][k] = crossing(now->cvode, f, k, from, t, before[k], value, now->between) - laid;
        before[k] = value;
      }
      clouding(now->cvode, f, laid, from, t, now->between, &a->peak[coat], &a->low[coat]);
    }
    memcpy(y, state, sizeof(double) * f->n);
    long steps, r, j, l;
    CVodeGetNumSteps(now->cvode, &steps);
    CVodeGetNumRhsEvals(now->cvode, &r);
    CVodeGetNumJacEvals(now->cvode, &j);
    CVodeGetNumLinSolvSetups(now->cvode, &l);
    a->steps += steps, a->rates += r, a->jacobians += j, a->factors += l;
  }
}

/* Processor time: another program on the same core does not count. */
static double now_ms(void) {
  struct timespec t;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return t.tv_sec * 1e3 + t.tv_nsec / 1e6;
}

int main(int argc, char **argv) {
  if (argc != 5) {
    fprintf(stderr, "usage: cvode_film band|klu|dense whole|merged RTOL SECONDS\n");
    return 2;
  }
  int merged = !strcmp(argv[2], "merged");
  rtol = atof(argv[3]);
  double limit = 1000 * atof(argv[4]);
  set_up();
  SUNContext context;
  SUNContext_Create(NULL, &context);
  Stage stages[COATS];
  static Film films[COATS];
  for (int i = 0; i < COATS; i++) stages[i] = stage(context, argv[1], PER_COAT + i * (merged ? 3 : PER_COAT), &films[i]);
  Answer a;
  run(stages, merged, &a);
  double start = now_ms(), best = 1e9;
  do {
    double t = now_ms();
    run(stages, merged, &a);
    t = now_ms() - t;
    best = fmin(best, t);
  } while (now_ms() - start < limit);
  printf("cvode-%s\t%s\t%g\t%.4f\t%ld\t%ld\t%ld\t%ld\t%.9g\t%.9g\t%.9g\t%.9g\t%.9g\t%.9g\t%.9g\t%.9g\n", argv[1],
         argv[2], rtol, best, a.steps, a.rates, a.jacobians, a.factors, a.milestone[5][RUB_OUT],
         a.milestone[5][DRY_HARD], a.milestone[0][TOUCH], a.milestone[0][RECOAT], a.x_before[3], a.x_before[5],
         a.peak[0], a.peak[5]);
  return 0;
}
