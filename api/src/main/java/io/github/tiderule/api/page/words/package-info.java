/** What the pages say, and how they write dates and numbers. */
@NullMarked
package io.github.tiderule.api.page.words;

import org.jspecify.annotations.NullMarked;
