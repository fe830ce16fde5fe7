package io.github.tiderule.engine.timeline;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * How well the progesterone results fit each LH peak of a lattice, for each course on which she
 * ovulates, in this order: logs, with all results and without each one; how odd each result looks;
 * and how well all numbers fit together.
 */
record CourseWeights(Course ordinary, Course plateau, Course irregular, Course failing) {

  /** Log of a weight that is none. */
  private static final double NOTHING = Double.NEGATIVE_INFINITY;

  /**
   * One course.
   *
   * @param log by place of the lattice
   * @param logWithout by result, then by place
   * @param odd by result, then by place: share in which that result is grossly wrong
   * @param fit by place: how likely numbers are that fit worse
   */
  record Course(double[] log, double[][] logWithout, double[][] odd, double[] fit) {

    private static Course empty(int places, int results) {
      return new Course(
          new double[places],
          new double[results][places],
          new double[results][places],
          new double[places]);
    }

    private void keep(Mixture mixture, int place) {
      log[place] = mixture.log();
      for (int r = 0; r < logWithout.length; r++) {
        logWithout[r][place] = mixture.logWithout(r);
        odd[r][place] = mixture.oddShare(r);
      }
      fit[place] = mixture.fit();
    }

    /** The same on a finer lattice within this one, as a part of a longer one; nothing beyond. */
    private Course between(Lattice from, Lattice to, Lattice whole) {
      Interpolation interpolation = Interpolation.of(from, to);
      int skipped = to.first() - whole.first();
      int places = whole.count();
      return new Course(
          part(interpolation.cubic(log), NOTHING, skipped, places),
          Arrays.stream(logWithout)
              .map(one -> part(interpolation.cubic(one), NOTHING, skipped, places))
              .toArray(double[][]::new),
          Arrays.stream(odd)
              .map(one -> part(interpolation.linear(one), 0, skipped, places))
              .toArray(double[][]::new),
          part(interpolation.linear(fit), 0, skipped, places));
    }

    private static double[] part(double[] values, double beyond, int skipped, int places) {
      double[] whole = new double[places];
      Arrays.fill(whole, beyond);
      System.arraycopy(values, 0, whole, skipped, values.length);
      return whole;
    }

    /** The log weights with all results, or without the r-th. */
    double[] but(int r) {
      return r < 0 ? log : logWithout[r];
    }
  }

  private static CourseWeights of(List<Course> courses) {
    return new CourseWeights(courses.get(0), courses.get(1), courses.get(2), courses.get(3));
  }

  private List<Course> all() {
    return List.of(ordinary, plateau, irregular, failing);
  }

  /** The log weights with all results, or without the r-th, by course. */
  double[][] but(int r) {
    return all().stream().map(course -> course.but(r)).toArray(double[][]::new);
  }

  /** How odd the r-th result looks, by course. */
  double[][] odd(int r) {
    return all().stream().map(course -> course.odd()[r]).toArray(double[][]::new);
  }

  /** How well all numbers fit together, by course; an irregular course is no measure of it. */
  double[][] fit() {
    double[][] fit = all().stream().map(Course::fit).toArray(double[][]::new);
    fit[2] = new double[fit[2].length];
    return fit;
  }

  /**
   * On a fine lattice, interpolated from one with steps of so many days: as functions of the peak
   * these logs are smooth, whatever sharp evidence a fine lattice is for.
   *
   * @param unrested the part of it where courses without a rest have weight
   * @param rested the part where those with a rest have
   */
  static CourseWeights between(
      Lattice fine,
      Lattice unrested,
      Lattice rested,
      double step,
      ProgesteroneLikelihood progesterone) {
    Lattice sparse = around(unrested, step);
    CourseWeights weights = unrested(sparse, progesterone);
    Lattice dense = around(rested, step);
    return new CourseWeights(
        weights.ordinary.between(sparse, unrested, fine),
        rested(dense, progesterone).between(dense, rested, fine),
        weights.irregular.between(sparse, unrested, fine),
        weights.failing.between(sparse, unrested, fine));
  }

  private static Lattice around(Lattice fine, double step) {
    return Lattice.covering(fine.at(0) - step, fine.at(fine.count() - 1) + step, step);
  }

  static CourseWeights on(Lattice lattice, ProgesteroneLikelihood progesterone) {
    CourseWeights weights = unrested(lattice, progesterone);
    return new CourseWeights(
        weights.ordinary, rested(lattice, progesterone), weights.irregular, weights.failing);
  }

  private static Course rested(Lattice lattice, ProgesteroneLikelihood progesterone) {
    Course course = Course.empty(lattice.count(), progesterone.ids().size());
    Mixture sum = progesterone.mixture();
    for (int i = 0; i < lattice.count(); i++) {
      progesterone.rested(lattice, i, sum);
      course.keep(sum, i);
    }
    return course;
  }

  /** All but the plateau. */
  private static CourseWeights unrested(Lattice lattice, ProgesteroneLikelihood progesterone) {
    int places = lattice.count();
    int results = progesterone.ids().size();
    List<Course> courses =
        Stream.generate(() -> Course.empty(places, results))
            .limit(ProgesteroneLikelihood.COURSES)
            .toList();
    if (results > 0) {
      Mixture[] sums =
          Stream.generate(progesterone::mixture)
              .limit(ProgesteroneLikelihood.COURSES)
              .toArray(Mixture[]::new);
      for (int i = 0; i < places; i++) {
        progesterone.unrested(lattice.at(i), sums);
        for (int c = 0; c < sums.length; c++) {
          if (c != 1) {
            courses.get(c).keep(sums[c], i);
          }
        }
      }
    }
    return of(courses);
  }
}
