package io.github.tiderule.api.page;

import io.github.tiderule.api.service.Desk;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.TestInstance;

/**
 * One browser for all tests of a class, and for each a service without users, whose record is
 * empty.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class InBrowser {

  protected Browser browser;
  protected Desk desk;

  @BeforeAll
  void start() {
    browser = Browser.start();
  }

  @AfterAll
  void stop() {
    if (browser != null) {
      browser.close();
    }
  }

  @BeforeEach
  void open() {
    desk = Desk.open();
    browser.at(desk.service.port());
    browser.asked();
  }

  /** Whatever a test did: nobody else was asked, and the policy had nothing to forbid. */
  @AfterEach
  void nothingElseWasAskedForAndNothingForbidden() {
    Steps.close(desk, browser);
  }
}
