package io.github.tiderule.api.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.github.tiderule.api.service.Answer;

/**
 * Writes pages from the templates of {@code src/main/jte}, which were compiled with the program.
 */
final class Templates {

  private static final String COMPILED = "io.github.tiderule.api.page.html";
  private static final int OK = 200;

  /** Made when the first page is asked for. */
  private static final class Engine {
    static final TemplateEngine TEMPLATES =
        TemplateEngine.createPrecompiled(null, ContentType.Html, null, COMPILED);
  }

  private Templates() {}

  /** A page from the template of that name. */
  static Answer page(String template, Object model) {
    return page(OK, template, model);
  }

  static Answer page(int status, String template, Object model) {
    StringOutput html = new StringOutput();
    Engine.TEMPLATES.render(template + ".jte", model, html);
    return Answer.page(status, html.toString());
  }
}
