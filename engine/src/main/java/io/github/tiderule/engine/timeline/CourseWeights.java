package io.github.tiderule.engine.timeline;

import java.util.Arrays;
import java.util.stream.Stream;

/**
 * How well the progesterone results fit each LH peak of a lattice, for the ordinary course and for
 * one with a plateau: logs, with all results and without each one; and how odd each number looks.
 */
record CourseWeights(Course ordinary, Course plateau) {

  /**
   * One course.
   *
   * @param log by place of the lattice
   * @param logWithout by result, then by place
   * @param odd by number, then by place: share in which that number is the odd one out
   * @param fit by place: how likely numbers are that fit worse
   */
  record Course(double[] log, double[][] logWithout, double[][] odd, double[] fit) {

    private static Course empty(int places, int results, int values) {
      return new Course(
          new double[places],
          new double[results][places],
          new double[values][places],
          new double[places]);
    }

    private void keep(Mixture mixture, int place) {
      log[place] = mixture.log();
      for (int r = 0; r < logWithout.length; r++) {
        logWithout[r][place] = mixture.logWithout(r);
      }
      for (int j = 0; j < odd.length; j++) {
        odd[j][place] = mixture.oddShare(j);
      }
      fit[place] = mixture.fit();
    }

    /** The same on a finer lattice within this one. */
    private Course between(Interpolation interpolation) {
      return new Course(
          interpolation.cubic(log),
          Arrays.stream(logWithout).map(interpolation::cubic).toArray(double[][]::new),
          Arrays.stream(odd).map(interpolation::linear).toArray(double[][]::new),
          interpolation.linear(fit));
    }

    /** The log weights with all results, or without the r-th. */
    double[] but(int r) {
      return r < 0 ? log : logWithout[r];
    }
  }

  /**
   * On a fine lattice, interpolated from one with steps of so many days: as functions of the peak
   * these logs are smooth, whatever sharp evidence a fine lattice is for.
   */
  static CourseWeights between(Lattice fine, double step, ProgesteroneLikelihood progesterone) {
    Lattice sparse = Lattice.covering(fine.at(0) - step, fine.at(fine.count() - 1) + step, step);
    Interpolation interpolation = Interpolation.of(sparse, fine);
    CourseWeights weights = on(sparse, progesterone);
    return new CourseWeights(
        weights.ordinary.between(interpolation), weights.plateau.between(interpolation));
  }

  static CourseWeights on(Lattice lattice, ProgesteroneLikelihood progesterone) {
    int places = lattice.count();
    int results = progesterone.ids().size();
    Course ordinary = Course.empty(places, results, progesterone.values());
    Course plateau = Course.empty(places, results, progesterone.values());
    if (results > 0) {
      Mixture one = progesterone.mixture();
      for (int i = 0; i < places; i++) {
        progesterone.ordinary(lattice.at(i), one);
        ordinary.keep(one, i);
      }
      Mixture[] all = Stream.generate(progesterone::mixture).limit(places).toArray(Mixture[]::new);
      progesterone.plateaus(lattice, all);
      for (int i = 0; i < places; i++) {
        plateau.keep(all[i], i);
      }
    }
    return new CourseWeights(ordinary, plateau);
  }
}
