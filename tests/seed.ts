// Property tests draw anew at every run on a desk, so that they find what nobody thought of. In CI all runs of one commit
// draw alike: what fails there fails again.
import fc from 'fast-check';

if (process.env.CI) fc.configureGlobal({ seed: 20_261_125 });
