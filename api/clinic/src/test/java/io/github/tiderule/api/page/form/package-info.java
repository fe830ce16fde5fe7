/** Tests of the forms. */
@NullMarked
package io.github.tiderule.api.page.form;

import org.jspecify.annotations.NullMarked;
