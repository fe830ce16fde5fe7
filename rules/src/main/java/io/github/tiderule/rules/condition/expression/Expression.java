package io.github.tiderule.rules.condition.expression;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Works out one side of a test, such as {@code Hours.between( $a.at, at ) / 24}, for showing the
 * value it had. Whether the test holds is not its business.
 */
public final class Expression {

  /** A value that is missing was needed. */
  public static final class MissingValue extends RuntimeException {
    private static final long serialVersionUID = 1L;

    MissingValue(String name) {
      super(name);
    }
  }

  private final Tokens tokens;
  private final @Nullable Object own;
  private final Map<String, @Nullable Object> names;
  private final Map<String, Class<?>> imports;

  private Expression(
      Tokens tokens,
      @Nullable Object own,
      Map<String, @Nullable Object> names,
      Map<String, Class<?>> imports) {
    this.tokens = tokens;
    this.own = own;
    this.names = names;
    this.imports = imports;
  }

  /**
   * The value of an expression; absent for a missing one that nothing was asked of.
   *
   * @param own the fact whose own properties are named plainly
   * @param names values of the names that begin with a dollar sign
   * @param imports classes by simple name
   * @throws MissingValue if a property of a missing value is asked for
   * @throws IllegalArgumentException if it is of a form not known here
   */
  public static @Nullable Object value(
      Tokens tokens,
      @Nullable Object own,
      Map<String, @Nullable Object> names,
      Map<String, Class<?>> imports) {
    Expression expression = new Expression(tokens, own, names, imports);
    @Nullable Object value = expression.sum();
    if (!tokens.done()) {
      throw new IllegalArgumentException("not an expression: " + tokens);
    }
    return value;
  }

  private @Nullable Object sum() {
    @Nullable Object value = product();
    while (tokens.peek().equals("+") || tokens.peek().equals("-")) {
      boolean plus = tokens.next().equals("+");
      @Nullable Object right = product();
      value =
          plus && value instanceof String text
              ? text + right
              : number(value) + (plus ? number(right) : -number(right));
    }
    return value;
  }

  private @Nullable Object product() {
    @Nullable Object value = term();
    while (tokens.peek().equals("*") || tokens.peek().equals("/")) {
      boolean times = tokens.next().equals("*");
      double right = number(term());
      value = times ? number(value) * right : number(value) / right;
    }
    return value;
  }

  private static double number(@Nullable Object value) {
    if (value == null) {
      throw new MissingValue("a number");
    }
    if (value instanceof Number number) {
      return number.doubleValue();
    }
    throw new IllegalArgumentException("not a number: " + value);
  }

  private @Nullable Object term() {
    if (tokens.take("-")) {
      return -number(term());
    }
    if (tokens.take("(")) {
      @Nullable Object value = sum();
      tokens.expect(")");
      return rest(value);
    }
    String token = tokens.next();
    char first = token.charAt(0);
    if (first == '"') {
      return token.substring(1, token.length() - 1);
    }
    if (Character.isDigit(first)) {
      return Double.valueOf(token);
    }
    if (first == '$') {
      if (!names.containsKey(token)) {
        throw new IllegalArgumentException("no name " + token);
      }
      return rest(names.get(token));
    }
    return switch (token) {
      case "null" -> null;
      case "true" -> true;
      case "false" -> false;
      default -> rest(Character.isUpperCase(first) ? ofClass(token) : member(own, token));
    };
  }

  private @Nullable Object ofClass(String name) {
    @Nullable Class<?> type = imports.get(name);
    if (type == null) {
      throw new IllegalArgumentException("no class " + name);
    }
    tokens.expect(".");
    String member = tokens.next();
    return tokens.peek().equals("(")
        ? Member.call(null, type, member, arguments())
        : Member.constant(type, member);
  }

  private @Nullable Object rest(@Nullable Object start) {
    @Nullable Object value = start;
    while (tokens.take(".")) {
      value = member(value, tokens.next());
    }
    return value;
  }

  private @Nullable Object member(@Nullable Object of, String name) {
    if (of == null) {
      throw new MissingValue(name);
    }
    return tokens.peek().equals("(")
        ? Member.call(of, of.getClass(), name, arguments())
        : Member.property(of, name);
  }

  private List<Object> arguments() {
    List<Object> arguments = new ArrayList<>();
    tokens.expect("(");
    while (!tokens.take(")")) {
      @Nullable Object argument = sum();
      if (argument == null) {
        throw new MissingValue("an argument");
      }
      arguments.add(argument);
      tokens.take(",");
    }
    return arguments;
  }
}
