package io.github.tiderule.cases.report;

import java.util.List;

/** A report as one page of HTML without anything from elsewhere; plots stand in it. */
final class HtmlSheet implements Sheet {

  private static final String HEAD =
      """
      <!doctype html>
      <html lang="en">
      <head>
      <meta charset="utf-8">
      <meta name="viewport" content="width=device-width, initial-scale=1">
      <title>%s</title>
      <style>
      body { font: 1rem/1.5 system-ui, sans-serif; margin: 2rem auto; max-width: 62rem;
        padding: 0 1rem; color: #1c2430; background: #fff; }
      h1, h2, h3 { line-height: 1.2; } h2 { margin-top: 2.5rem; }
      table { border-collapse: collapse; display: block; overflow-x: auto; font-size: .875rem;
        margin: 1rem 0; }
      th, td { border-bottom: 1px solid #d5dae1; padding: .3rem .6rem; text-align: left;
        vertical-align: top; }
      th { border-bottom-width: 2px; white-space: nowrap; }
      tr.missed td { background: #fdf1e3; } tr.untested td { color: #5b6675; }
      figure { margin: 1.5rem 0; } svg { max-width: 100%%; height: auto; }
      figcaption { font-size: .875rem; color: #46505f; }
      </style>
      </head>
      <body>
      """;

  private final StringBuilder out = new StringBuilder();

  HtmlSheet(String title) {
    out.append(HEAD.formatted(escaped(title)));
  }

  @Override
  public void heading(int level, String text) {
    out.append("<h%d>%s</h%d>\n".formatted(level, escaped(text), level));
  }

  @Override
  public void paragraph(String text) {
    out.append("<p>").append(escaped(text)).append("</p>\n");
  }

  @Override
  public void table(List<String> head, List<List<String>> rows) {
    out.append("<table>\n<thead><tr>");
    head.forEach(cell -> out.append("<th scope=\"col\">").append(escaped(cell)).append("</th>"));
    out.append("</tr></thead>\n<tbody>\n");
    for (List<String> row : rows) {
      out.append("<tr").append(kind(row)).append('>');
      row.forEach(cell -> out.append("<td>").append(escaped(cell)).append("</td>"));
      out.append("</tr>\n");
    }
    out.append("</tbody>\n</table>\n");
  }

  /** Rows that tell of something missing are set off. */
  private static String kind(List<String> row) {
    return row.contains("missed")
        ? " class=\"missed\""
        : row.contains("untested") ? " class=\"untested\"" : "";
  }

  @Override
  public void plot(String file, String svg, String caption) {
    out.append("<figure>\n").append(svg);
    out.append("<figcaption>").append(escaped(caption)).append("</figcaption>\n</figure>\n");
  }

  @Override
  public String text() {
    return out + "</body>\n</html>\n";
  }

  static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
