package io.github.tiderule.api.page.frame;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.format.node.Characters;
import io.github.tiderule.format.node.Markup;

/**
 * Writes pages from the templates of {@code src/main/jte}, which were compiled with the program.
 */
public final class Templates {

  private static final String COMPILED = "io.github.tiderule.api.page.html";
  private static final int OK = 200;

  /** Made when the first page is asked for. */
  private static final class Engine {
    static final TemplateEngine TEMPLATES =
        TemplateEngine.createPrecompiled(null, ContentType.Html, null, COMPILED);
  }

  private Templates() {}

  /** A page from the template of that name. */
  public static Answer page(String template, Object model) {
    return page(OK, template, model);
  }

  /** The same with another HTTP status. */
  public static Answer page(int status, String template, Object model) {
    StringOutput html = new StringOutput();
    Engine.TEMPLATES.render(template + ".jte", model, html);
    String page = html.toString();
    String visible = Characters.visible(page);
    // what somebody typed can come back in a form; nothing else has such characters
    return Answer.page(status, visible.equals(page) ? page : withoutActing(page));
  }

  /** The page with every character written out that does not show as itself. */
  private static String withoutActing(String page) {
    StringBuilder safe = new StringBuilder(page.length());
    page.codePoints()
        .forEach(
            character -> {
              String one = Character.toString(character);
              String shown = Characters.visible(one);
              boolean stays = character == '\r' || shown.equals(one);
              safe.append(stays ? one : Markup.escaped(shown));
            });
    return safe.toString();
  }
}
