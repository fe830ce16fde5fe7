/** What is typed into the forms of the pages, and how it becomes a part of a cycle file. */
@NullMarked
package io.github.tiderule.api.page.form;

import org.jspecify.annotations.NullMarked;
