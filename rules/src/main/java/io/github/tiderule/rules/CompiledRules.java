package io.github.tiderule.rules;

import io.github.tiderule.rules.source.Table;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.drools.model.Model;

/**
 * Finds the rules that the build compiled to Java.
 *
 * <p>They are loaded directly: a deployment descriptor costs seconds at start, and in a jar made of
 * several jars it gave an empty rule base without an error.
 */
final class CompiledRules {

  private static final String LIST = "/META-INF/kie/io.github.tiderule/tiderule-rules/drools-model";
  private static final String PACKAGE = "io.github.tiderule.rulebase.";

  private CompiledRules() {}

  /** Names of the compiled models of each stage that has rules. */
  static Map<Stage, List<String>> byStage() {
    Map<Stage, List<String>> names = new EnumMap<>(Stage.class);
    for (String line : Table.text(LIST).lines().map(String::strip).toList()) {
      if (line.startsWith(PACKAGE)) {
        names.computeIfAbsent(stage(line), stage -> new ArrayList<>()).add(line);
      }
    }
    return names;
  }

  /** The models of some names. */
  static List<Model> models(List<String> names) {
    return names.stream().map(CompiledRules::instance).toList();
  }

  private static Stage stage(String className) {
    String rest = className.substring(PACKAGE.length());
    String word = rest.substring(0, rest.indexOf('.'));
    for (Stage stage : Stage.values()) {
      if (stage.word().equals(word)) {
        return stage;
      }
    }
    throw new IllegalStateException("rules of no known stage: " + className);
  }

  private static Model instance(String className) {
    try {
      return Class.forName(className)
          .asSubclass(Model.class)
          .getDeclaredConstructor()
          .newInstance();
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("cannot load the compiled rules " + className, e);
    }
  }
}
