/** The content has a problem that stops a build, or the command can't do what was asked. */
export const PROBLEM_CODE = 1;

/** There is no problem, but something that can't be right as it stands. */
export const IMPOSSIBLE_CODE = 2;
