/** Who may do what with the record: people, roles, passwords, sessions, tokens, the audit log. */
@NullMarked
package io.github.tiderule.api.access;

import org.jspecify.annotations.NullMarked;
