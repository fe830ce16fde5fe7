package io.github.tiderule.cases.report;

import java.util.List;

/** Something a report is written on, from top to bottom. */
interface Sheet {

  void heading(int level, String text);

  void paragraph(String text);

  /**
   * A table.
   *
   * @param rows each as long as the head
   */
  void table(List<String> head, List<List<String>> rows);

  /**
   * A plot.
   *
   * @param file name it is kept under beside the report
   * @param caption what is to be seen on it, for those who cannot see it too
   */
  void plot(String file, String svg, String caption);

  /** The whole text. */
  String text();
}
