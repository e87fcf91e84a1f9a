import { isRuleOfStyle } from '../places.ts';
import { complaintsAbout, type Rule } from '../rule.ts';

const machinePath = /(?<![\w.$}])\/(?:work|tmp|root|home|Users|var\/folders)\/[\w.-]+|\b[A-Z]:\\Users\\/g;

export const noMachinePaths: Rule = {
  name: 'no path of somebody’s machine is written down',
  check: (files) =>
    files
      .filter((file) => !isRuleOfStyle(file.path))
      .flatMap((file) =>
        complaintsAbout(
          file.path,
          file.text,
          machinePath,
          (match) => `names ${match[0]}: use a path from the project's root, os.tmpdir(), or a placeholder such as DIR`,
        ),
      ),
  bad: [
    { path: 'README.md', text: 'Unpack it to /tmp/twelvemonth and go.' },
    { path: 'packages/store/test/open.test.ts', text: "open('/root/x.db')" },
  ],
  good: [
    { path: 'docs/guide/install.md', text: 'Data lie in /var/lib/twelvemonth.' },
    { path: 'apps/server/src/routes.ts', text: 'get(`${base}/work/list`)' },
  ],
};
