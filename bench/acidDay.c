/* CVODE as a compiled peer of the acid day. Reads the numbers of the model and its phases from a file, then tasks "CVODE rtol atol" on
   standard input, and answers each with ms of processor time and the pH of every minute. BDF, Newton, banded Jacobian by differences. */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunmatrix/sunmatrix_band.h>
#include <time.h>

#define N 6
#define ROW 9
#define MOUTH ((N + 1) * ROW)
#define SIZE (MOUTH + 6)
#define BAND 17
#define RELEASES 8
#define PHASES 64

typedef struct {
  double start, end, untasted, base, least, fed, food[6], releases, from[RELEASES], rate[RELEASES], amount[RELEASES];
} Phase;

/* In the order in which bench/acidDay.ts writes them. */
static struct {
  double w, h, inner[8], surface[8], basal[N], buffer[4], bufferK[4];
  double lactic, acetic, phosphate, carbonic, bicarbonate, ammonium, kw, freeH;
  double clear, highest, speed, speedFlow, leastFactor, mostFactor, filmLength, mixing, perHexose;
  double vmax, alpha, km, half1, half2, steep, yl, ya, sl, sa, yc, stored, use, most, vu, ku;
  double co2, hco3, perFlow, hco3Most, pLow, pHigh, uLow, uHigh, lowFlow, highFlow, acetate, restFlow;
  double phases;
} M;
static Phase phases[PHASES];
static Phase *now;

static double flow_at(double sugar) {
  double highest = fmax(M.highest, now->untasted);
  return fmax(now->base, fmin(highest, now->untasted + M.perHexose * sugar));
}

static void fresh(double flow, double *out) {
  double hco3 = fmin(M.hco3Most, M.hco3 + M.perFlow * flow), h = M.carbonic * M.co2 / hco3, co3 = hco3 * M.bicarbonate / h;
  double share = fmin(1, fmax(0, (flow - M.lowFlow) / (M.highFlow - M.lowFlow))), p = M.pLow + share * (M.pHigh - M.pLow);
  out[0] = M.acetate;
  out[1] = p;
  out[2] = M.co2 + hco3 + co3;
  out[3] = M.uLow + share * (M.uHigh - M.uLow);
  out[4] = M.acetate * h / (h + M.acetic) + p * h / (h + M.phosphate) + M.co2 - co3 + M.freeH * h - M.kw / h;
}

static int derivative(realtype t, N_Vector yv, N_Vector dv, void *data) {
  double *y = N_VGetArrayPointer(yv), *d = N_VGetArrayPointer(dv), *mouth = y + MOUTH, *dmouth = d + MOUTH;
  double form[N + 1][6], part[N + 1][6], slope[N + 1], dt[N + 1], sal[5], flow = flow_at(mouth[0]);
  (void)data;
  memset(d, 0, SIZE * sizeof(double));
  for (int i = 0; i <= N; i++) {
    double *c = y + i * ROW, h = exp(-M_LN10 * c[8]);
    double l = h / (h + M.lactic), a = h / (h + M.acetic), p = h / (h + M.phosphate), n = M.ammonium / (h + M.ammonium);
    double both = M.carbonic * M.bicarbonate, total = h * h + h * M.carbonic + both, x = h * h / total, z = both / total;
    double share[6] = {l, a, p, x - z, -n, 0};
    memcpy(part[i], share, sizeof share);
    form[i][0] = c[1] * l, form[i][1] = c[2] * a, form[i][2] = c[3] * p, form[i][3] = c[4] * (x - z), form[i][4] = -c[6] * n;
    form[i][5] = M.freeH * h - M.kw / h;
    slope[i] = c[1] * l * (1 - l) + c[2] * a * (1 - a) + c[3] * p * (1 - p) + c[4] * (x * (1 - x + z) + z * (1 + x - z)) +
               c[6] * n * (1 - n) + M.freeH * h + M.kw / h;
    if (i < N)
      for (int j = 0; j < 4; j++) {
        double b = h / (h + M.bufferK[j]);
        slope[i] += M.buffer[j] * b * (1 - b);
      }
    dt[i] = 0;
  }
  static const int carrier[6] = {1, 2, 3, 4, 6, 7};
  for (int i = 0; i < N; i++) {
    const double *g = i == N - 1 ? M.surface : M.inner;
    double after = i == N - 1 ? M.h : M.w;
    for (int j = 0; j < 7; j++) {
      double flux = g[j] * (y[i * ROW + j] - y[(i + 1) * ROW + j]);
      d[i * ROW + j] -= flux / M.w;
      d[(i + 1) * ROW + j] += flux / after;
    }
    for (int j = 0; j < 6; j++) {
      double flux = g[carrier[j]] * (form[i][j] - form[i + 1][j]);
      dt[i] -= flux / M.w;
      dt[i + 1] += flux / after;
    }
  }
  fresh(flow, sal);
  if (now->fed == 0) {
    for (int j = 0; j < 6; j++) dmouth[j] = -M.clear * flow * mouth[j];
    for (int j = 0; j < (int)now->releases; j++) dmouth[0] += now->amount[j] * exp(-now->rate[j] * (t - now->from[j]));
  } else {
    dmouth[0] = (now->food[0] - mouth[0]) / M.mixing;
    for (int j = 0; j < 5; j++) dmouth[j + 1] = ((isnan(now->food[j + 1]) ? 0 : now->food[j + 1] - sal[j]) - mouth[j + 1]) / M.mixing;
  }
  double factor = fmin(M.mostFactor, fmax(M.leastFactor, flow / M.speedFlow));
  double exchange = fmax(now->least, M.speed * factor / (60 * M.filmLength)), *film = y + N * ROW, *dfilm = d + N * ROW;
  double beside[7] = {mouth[0], 0, sal[0] + mouth[1], sal[1] + mouth[2], sal[2] + mouth[3], sal[3] + mouth[4], 0}, filmT = 0;
  for (int j = 0; j < 6; j++) filmT += form[N][j];
  for (int j = 0; j < 7; j++) dfilm[j] += exchange * (beside[j] - film[j]);
  dt[N] += exchange * (sal[4] + mouth[5] - filmT);
  for (int i = 0; i < N; i++) {
    double *c = y + i * ROW, *e = d + i * ROW, s = c[0];
    double f = (1 - M.alpha) / (1 + exp(M_LN10 * M.steep * (M.half1 - c[8]))) + M.alpha / (1 + exp(M_LN10 * M.steep * (M.half2 - c[8])));
    double q = M.vmax * f * s / (M.km + s), in = M.stored * (1 - c[7] / M.most) * q, out = M.use * c[7] * f * M.km / (M.km + s);
    double made = q - in + out, mix = s / (s + 2 * M.km), lac = made * (2 * M.yl * mix + M.sl * (1 - mix));
    double ace = made * (2 * M.ya * mix + M.sa * (1 - mix)) + M.basal[i] * f, split = M.vu * c[5] / (M.ku + c[5]);
    e[0] -= q, e[1] += lac, e[2] += ace, e[4] += split + M.yc * made, e[5] -= split, e[6] += 2 * split, e[7] = in - out;
    dt[i] += lac + ace + M.yc * made - split;
  }
  for (int i = 0; i <= N; i++) {
    double *e = d + i * ROW, *p = part[i];
    double by = e[1] * p[0] + e[2] * p[1] + e[3] * p[2] + e[4] * p[3] + e[6] * p[4];
    e[8] = (dt[i] - by) / (-M_LN10 * slope[i]);
  }
  return 0;
}

static double run(double rtol, double atol, double *ph) {
  struct timespec began, ended;
  SUNContext context;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &began);
  SUNContext_Create(NULL, &context);
  N_Vector y = N_VNew_Serial(SIZE, context);
  double *v = N_VGetArrayPointer(y), sal[5];
  void *solver = CVodeCreate(CV_BDF, context);
  SUNMatrix jacobian = SUNBandMatrix(SIZE, BAND, BAND, context);
  SUNLinearSolver linear = SUNLinSol_Band(y, jacobian, context);
  memset(v, 0, SIZE * sizeof(double));
  fresh(phases[0].untasted, sal);
  for (int i = 0; i <= N; i++) {
    for (int j = 0; j < 4; j++) v[i * ROW + 2 + j] = sal[j];
    v[i * ROW + 8] = 7;
  }
  CVodeInit(solver, derivative, phases[0].start, y);
  CVodeSStolerances(solver, rtol, atol);
  CVodeSetLinearSolver(solver, linear, jacobian);
  CVodeSetErrFile(solver, NULL);
  CVodeSetMaxNumSteps(solver, 1000000);
  int minute = 0;
  for (int k = 0; k < (int)M.phases; k++) {
    now = phases + k;
    double t = now->start;
    CVodeReInit(solver, t, y);
    CVodeSetStopTime(solver, now->end);
    while (t < now->end - 1e-9) {
      double next = fmin(now->end, 60.0 * minute > t ? 60.0 * minute : now->end);
      if (CVode(solver, next, y, &t, CV_NORMAL) < 0) return NAN;
      if (fabs(t - 60.0 * minute) < 1e-9) ph[minute++] = v[8] + (v[8] - v[ROW + 8]) / 8;
    }
  }
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &ended);
  CVodeFree(&solver);
  SUNLinSolFree(linear);
  SUNMatDestroy(jacobian);
  N_VDestroy(y);
  SUNContext_Free(&context);
  return 1e3 * (ended.tv_sec - began.tv_sec) + 1e-6 * (ended.tv_nsec - began.tv_nsec);
}

int main(int count, char **arguments) {
  FILE *file = count > 1 ? fopen(arguments[1], "r") : NULL;
  if (file == NULL) return 2;
  for (double *p = (double *)&M; p < (double *)(&M + 1); p++)
    if (fscanf(file, "%lf", p) != 1) return 3;
  for (int k = 0; k < (int)M.phases; k++)
    for (double *p = (double *)(phases + k); p < (double *)(phases + k + 1); p++)
      if (fscanf(file, "%lf", p) != 1) return 4;
  static double ph[1441];
  double rtol, atol;
  while (scanf("%*s %lf %lf", &rtol, &atol) == 2) {
    printf("%.4f", run(rtol, atol, ph));
    for (int i = 0; i <= 1440; i++) printf(" %.6f", ph[i]);
    printf("\n");
    fflush(stdout);
  }
  return 0;
}
