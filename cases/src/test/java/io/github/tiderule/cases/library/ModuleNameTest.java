package io.github.tiderule.cases.library;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.rules.RuleBase;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Both jars of the library have a module name that does not depend on their file names. */
class ModuleNameTest {

  @ParameterizedTest
  @ValueSource(classes = {RuleBase.class, Tiderule.class})
  void theJarIsAModuleNamedLikeItsPackage(Class<?> type) throws URISyntaxException {
    Path jar = Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI());
    assumeTrue(Files.isRegularFile(jar), "only what is packed has a manifest");
    List<ModuleDescriptor> modules =
        ModuleFinder.of(jar).findAll().stream().map(one -> one.descriptor()).toList();
    assertThat(modules.size(), is(1));
    assertThat(modules.get(0).name(), is(type.getPackageName()));
    assertThat(modules.get(0).isAutomatic(), is(true));
  }
}
