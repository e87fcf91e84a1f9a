import { isRuleOfStyle } from '../places.ts';
import { complaintsAbout, type Rule } from '../rule.ts';

const registry =
  /registry\.[\w-]+\.\w+|\b(?:npmmirror|artifactory|jfrog|verdaccio|nexus)\b|^\s*(?:@[\w-]+:)?registry\s*=/gim;
const resolvedHost = /"resolved":\s*"(?:https?|git)[^"]*"/g;

export const noRegistryHosts: Rule = {
  name: 'no registry is named, in the lock or in words',
  check: (files) =>
    files
      .filter((file) => !isRuleOfStyle(file.path))
      .flatMap((file) => [
        ...complaintsAbout(
          file.path,
          file.text,
          registry,
          (match) => `names a registry (${match[0].trim()}): where packages come from is each machine's own setting`,
        ),
        ...(file.path.endsWith('package-lock.json')
          ? complaintsAbout(
              file.path,
              file.text,
              resolvedHost,
              () => 'carries a host: write the lock with omit-lockfile-registry-resolved=true, as .npmrc says',
            )
          : []),
      ]),
  bad: [
    { path: 'package-lock.json', text: '{ "resolved": "https://registry.example.org/x.tgz" }' },
    { path: '.npmrc', text: 'registry=https://packages.example.org/' },
  ],
  good: [
    { path: 'package-lock.json', text: '{ "resolved": "packages/clinical", "link": true }' },
    { path: '.npmrc', text: 'omit-lockfile-registry-resolved=true' },
  ],
};
