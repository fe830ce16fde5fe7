package io.github.tiderule.cases.launcher;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;

/** The runnable jar holds what a run needs and little else: {@code api/dependencies.md}. */
class RunnableJarTest {

  private static final Path JAR = Path.of("../api/target/tiderule.jar");

  /** What reads and compiles rules: the build has done that. */
  private static final List<String> COMPILERS =
      List.of(
          "com/github/javaparser/",
          "org/antlr/",
          "org/drools/drl/",
          "org/drools/ecj/",
          "org/drools/model/codegen/",
          "org/drools/mvel",
          "org/eclipse/jdt/",
          "org/mvel2/");

  private static List<String> names() throws IOException {
    // without packaging there is no jar to look at
    assumeTrue(Files.exists(JAR));
    try (ZipFile jar = new ZipFile(JAR.toFile())) {
      return jar.stream().map(ZipEntry::getName).filter(name -> !name.endsWith("/")).toList();
    }
  }

  private static List<String> below(String directory) throws IOException {
    return names().stream()
        .filter(name -> name.startsWith(directory))
        .map(name -> name.substring(directory.length()))
        .sorted()
        .toList();
  }

  @Test
  void isSmall() throws IOException {
    assertThat(names(), hasItem("io/github/tiderule/api/Main.class"));
    assertThat(Files.size(JAR), is(lessThan(38_000_000L)));
  }

  @Test
  void bringsNoCompilerOfRules() throws IOException {
    assertThat(
        names().stream().filter(name -> COMPILERS.stream().anyMatch(name::startsWith)).toList(),
        is(empty()));
  }

  @Test
  void bringsTheEmbeddedDatabaseForTheSystemsItNames() throws IOException {
    assertThat(
        below("org/sqlite/native/"),
        contains(
            "Linux-Musl/aarch64/libsqlitejdbc.so",
            "Linux-Musl/x86_64/libsqlitejdbc.so",
            "Linux/aarch64/libsqlitejdbc.so",
            "Linux/x86_64/libsqlitejdbc.so",
            "Mac/aarch64/libsqlitejdbc.dylib",
            "Mac/x86_64/libsqlitejdbc.dylib",
            "Windows/aarch64/sqlitejdbc.dll",
            "Windows/x86_64/sqlitejdbc.dll"));
  }

  @Test
  void readsNoPaper() throws IOException {
    assertThat(below("org/apache/fontbox/cmap/"), hasItem("Identity-H"));
    assertThat(
        below("org/apache/fontbox/cmap/").stream()
            .filter(name -> !name.endsWith(".class") && !name.startsWith("Identity-"))
            .toList(),
        is(empty()));
  }
}
