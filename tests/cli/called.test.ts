// The command line as a process, in a real repository: what is printed, exit codes, and the scripts of the README.
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type Bundles, bundled } from '../server/bundle.ts';
import { type TestRepository, testRepository } from './repository.ts';

const good = (name: string) => `rig ${name} {\n  roof  18 ft by 8 ft  epdm\n  cap   front  wide 4 in\n}\n`;
const bad = good('Tern').replace('front', 'frnt');

let bundles: Bundles;
beforeAll(() => {
  bundles = bundled();
});
afterAll(() => bundles.remove());

let repository: TestRepository;
beforeEach(() => {
  repository = testRepository({ 'wren.rig': good('Wren'), 'old.rig': bad });
  const bin = join(repository.folder, '.git/bin');
  mkdirSync(bin);
  writeFileSync(join(bin, 'rigseam'), `#!/bin/sh\nexec "${process.execPath}" "${bundles.commandLine}" "$@"\n`);
  chmodSync(join(bin, 'rigseam'), 0o755);
});
afterEach(() => repository.end());

function run(command: string, ...args: string[]) {
  const { status, stdout, stderr } = spawnSync(command, args, {
    cwd: repository.folder,
    encoding: 'utf8',
    env: { ...process.env, PATH: `${join(repository.folder, '.git/bin')}:${process.env.PATH}`, CI: '' },
  });
  return { status, stdout, stderr };
}

describe('check', () => {
  it('ends with 1 where something is found, with 0 where what changed is in order', () => {
    expect(run('rigseam', 'check', '.').status).toBe(1);
    const part = run('rigseam', 'check', '.', '--changed-since', 'HEAD');
    expect(part).toEqual({ status: 0, stdout: '0 files checked: nothing found.\n', stderr: '' });
    repository.write({ 'wren.rig': good('Wren').replace('4 in', '5 in') });
    expect(run('rigseam', 'check', '.', '--changed-since', 'HEAD').status).toBe(0);
    repository.write({ 'wren.rig': bad });
    expect(run('rigseam', 'check', '.', '--changed-since', 'HEAD').status).toBe(1);
  });

  it('ends with 2, and in words, where it is called wrongly', () => {
    for (const [args, said] of [
      [['--changed-since', 'nowhere'], 'git knows no revision `nowhere`'],
      [['--format', 'xml'], 'text, json, sarif, compact'],
      [['--severity', 'grave'], 'error, warning, information, hint'],
    ] as const) {
      const { status, stdout, stderr } = run('rigseam', 'check', '.', ...args);
      expect([status, stdout]).toEqual([2, '']);
      expect(stderr).toContain(said);
    }
  });

  it('prints the same JSON either way, and is quiet on a stream that is no terminal', () => {
    const json = run('rigseam', 'check', '.', '--json');
    expect(json.stderr).toBe('');
    expect(JSON.parse(json.stdout).findings.length).toBeGreaterThan(0);
    expect(run('rigseam', 'check', '.', '--format', 'json')).toEqual(json);
    expect(JSON.parse(run('rigseam', 'check', '.', '--format', 'sarif').stdout).version).toBe('2.1.0');
  });

  it('takes the severity of a rule from the policy in the repository', () => {
    const found = () => run('rigseam', 'check', 'a.rig', '--format', 'compact').stdout;
    const policy = (line: string) =>
      `policy Shop {\n${line}}\n\nrig Gull under Shop {\n  cap  front  wide 4 in\n  inspected 2020-04-18 {\n    rest  sound\n  }\n}\n`;
    repository.write({ 'a.rig': policy('') });
    const [, severity, rule] = /: (\w+) (inspection-[a-z-]+): /.exec(found()) ?? [];
    expect(severity).toMatch(/^(warning|information|hint)$/);
    repository.write({ 'a.rig': policy(`  severity ${rule} error\n`) });
    expect(found()).toContain(`: error ${rule}: `);
    repository.write({ 'a.rig': policy(`  severity ${rule} off\n`) });
    expect(found()).not.toContain(` ${rule}: `);
  });
});

describe('compare', () => {
  it('prints Markdown or JSON and ends with 0, with 2 where it is called wrongly', () => {
    repository.write({ 'wren.rig': good('Wren').replace('4 in', '5 in') });
    const told = run('rigseam', 'compare', '.', '--from', 'HEAD');
    expect(told.status).toBe(0);
    expect(told.stdout).toContain('cap front wide 4 in → cap front wide 5 in');
    const json = run('rigseam', 'compare', '.', '--from', 'HEAD', '--format', 'json');
    expect(JSON.parse(json.stdout)).toMatchObject({ document: 'rigseam/compare/1', rigs: [{ name: 'Wren' }] });
    expect(run('rigseam', 'compare', '.', '--from', 'HEAD', '--to', 'HEAD').stdout).toContain('no record differs');
    expect(run('rigseam', 'compare', '.').status).toBe(2);
    expect(run('rigseam', 'compare', '.', '--from', 'nowhere').status).toBe(2);
  });
});

describe('the scripts of the README', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  const script = (remark: string) => {
    const found = [...readme.matchAll(/```sh\n(#!\/bin\/sh\n[\s\S]*?)```/g)].find(([, text]) => text?.includes(remark));
    if (!found?.[1]) throw new Error(`the README has no script with ${remark}`);
    return found[1];
  };

  it('keep an error out of a commit, and let the rest in', () => {
    const hook = join(repository.folder, '.git/hooks/pre-commit');
    mkdirSync(join(hook, '..'), { recursive: true });
    writeFileSync(hook, script('# pre-commit:'));
    chmodSync(hook, 0o755);
    const commit = () =>
      run('git', '-c', 'user.name=Test', '-c', 'user.email=test@example.org', 'commit', '--all', '-m', 'x');
    repository.write({ 'wren.rig': bad.replace('Tern', 'Wren') });
    const refused = commit();
    expect(refused.status).toBe(1);
    expect(`${refused.stdout}${refused.stderr}`).toContain('frnt');
    repository.write({ 'wren.rig': good('Wren').replace('4 in', '5 in') });
    expect(commit().status).toBe(0);
    expect(repository.git('status', '--porcelain')).toBe('');
  });

  it('check a branch in CI and say what it costs', () => {
    writeFileSync(join(repository.folder, '.git/bin/ci'), script('# checks what a change touches'));
    chmodSync(join(repository.folder, '.git/bin/ci'), 0o755);
    repository.git('switch', '--quiet', '--create', 'topic');
    repository.write({ 'wren.rig': good('Wren').replace('4 in', '5 in') });
    repository.commit('wider');
    expect(run('ci', 'main').status).toBe(0);
    const read = (name: string) => readFileSync(join(repository.folder, name), 'utf8');
    expect(read('change.md')).toContain('cap front wide 4 in → cap front wide 5 in');
    expect(JSON.parse(read('findings.sarif')).runs).toHaveLength(1);
    repository.write({ 'wren.rig': bad.replace('Tern', 'Wren') });
    repository.commit('wrong');
    const failed = run('ci', 'main');
    expect(failed.status).toBe(1);
    expect(failed.stdout).toMatch(/^wren\.rig:3:9: error /m);
    expect(run('ci', 'nowhere').status).toBe(2);
  });
});
