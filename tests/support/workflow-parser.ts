/** The parser of workflow files by the hosts that run them, with their own schema. */
import { registerHooks } from 'node:module';

// It imports its schema as bundlers let it, without saying that this is JSON, which Node wants to be told.
const hooks = registerHooks({
  load: (url, context, next) =>
    next(url, url.endsWith('.json') ? { ...context, importAttributes: { type: 'json' } } : context),
});
const { convertWorkflowTemplate, parseWorkflow } = await import('@actions/workflow-parser');
hooks.deregister();

const SILENT = { error() {}, info() {}, verbose() {} };

/** What a workflow's host would refuse, and what each step runs or uses. */
export async function readWorkflow(content: string): Promise<{ faults: string[]; steps: string[] }> {
  const { context, value } = parseWorkflow({ name: 'guide.yml', content }, SILENT);
  const { jobs = [] } = value ? await convertWorkflowTemplate(context, value) : {};
  return {
    faults: context.errors.getErrors().map((it) => it.message),
    steps: jobs.flatMap((it) =>
      it.type === 'job'
        ? it.steps.map((step) => ('run' in step ? step.run.toString() : 'uses' in step ? step.uses.value : step.id))
        : [],
    ),
  };
}
