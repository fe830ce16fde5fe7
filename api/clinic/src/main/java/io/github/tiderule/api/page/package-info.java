/**
 * The pages people look at: what a breeder enters and reads, in any browser, without a script if
 * need be. They work on the record as every other door does; what they say is in {@code
 * words/page.properties}, how it stands on a page in the templates of {@code src/main/jte}.
 */
@NullMarked
package io.github.tiderule.api.page;

import org.jspecify.annotations.NullMarked;
